import { useLocation, useSearchParams } from 'wouter';
import type { StoredMaterial } from '../../../../api/contract/material.ts';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useDeleteMaterial } from '../../../queries/bench.ts';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { benchPath } from '../paths.ts';
import { MaterialEditor } from './MaterialEditor.tsx';
import { BLANK_MATERIAL, formOfMaterial, formOfStarter, type MaterialForm } from './material-form.ts';

interface MaterialFormPageProps {
  readonly study: string;
  /** The material to change; null for a new one. */
  readonly material: string | null;
}

export function MaterialFormPage({ study, material: id }: MaterialFormPageProps) {
  const [asked] = useSearchParams();
  const from = asked.get('from');
  return (
    <WithShelf study={study}>
      {(bench) => {
        const material = bench.materials.find((one) => one.id === id) ?? null;
        if (id !== null && !material) return <GoneMaterial study={study} />;
        const start = material ? formOfMaterial(material) : startOf(bench, from);
        return (
          <MaterialView
            key={material?.updatedAt ?? from}
            study={study}
            material={material}
            start={start}
            draftKey={`material.${study}.${id ?? `new.${from ?? ''}`}`}
          />
        );
      }}
    </WithShelf>
  );
}

function startOf({ shelf }: Bench, from: string | null): MaterialForm {
  const starter = from === null ? undefined : shelf.materials.get(from);
  return starter ? formOfStarter(starter) : BLANK_MATERIAL;
}

function GoneMaterial({ study }: { readonly study: string }) {
  const up = { to: benchPath(study, '/materials'), label: 'Materials' };
  return <PageHead title="This material is not here" lead="It may have been deleted." up={up} />;
}

function MaterialView(at: {
  readonly study: string;
  readonly material: StoredMaterial | null;
  readonly start: MaterialForm;
  readonly draftKey: string;
}) {
  const { study, material } = at;
  const [, navigate] = useLocation();
  const remove = useDeleteMaterial(study);
  const draft = useDraft(at.draftKey, at.start);
  const back = benchPath(study, '/materials');
  return (
    <>
      <PageHead
        title={material ? material.name : 'New material'}
        up={{ to: back, label: 'Materials' }}
        lead={
          material
            ? 'Batches weighed from it follow what is changed here.'
            : 'From a chemical formula, or from an analysis with its loss on ignition.'
        }
        actions={
          material && (
            <ConfirmDelete
              label="Delete this material"
              title={`Delete ${material.name}?`}
              lost={<p>It can be deleted once nothing is weighed from it. This cannot be undone.</p>}
              onDelete={async () => {
                await remove.mutateAsync(material.id);
                navigate(back);
              }}
            />
          )
        }
      />
      <MaterialEditor
        study={study}
        material={material}
        draft={draft}
        onSaved={() => {
          draft.clear();
          navigate(back);
        }}
      />
    </>
  );
}
