import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Select } from '../../../parts/Select.tsx';
import type { PageProps } from '../../../paths.ts';
import { useFirings } from '../../../queries/fire.ts';
import { firePath, phoneSheetPath } from '../paths.ts';

/** Before the fire is lit: which firing the sheet is for, and how it gets to the phone. */
export function SheetPage({ study }: PageProps) {
  const firings = useFirings(study);
  return (
    <>
      <PageHead
        title="At the fire"
        lead="A sheet for the phone: when it was lit, the air, readings, and the gloss of each zone. It works out of reach of any network, and sends what was noted later."
      />
      <Loaded query={firings} what="the firings">
        {(all) =>
          all.length === 0 ? (
            <EmptyState
              title="No firing to note things for"
              actions={<LinkButton to={firePath(study, '/firings')}>To the firings</LinkButton>}
            >
              <p>Record the firing first; its name is enough.</p>
            </EmptyState>
          ) : (
            <Choice study={study} firings={all} />
          )
        }
      </Loaded>
      <Cautions hazards={['fire', 'lead']} folded />
    </>
  );
}

function Choice({ study, firings }: { readonly study: string; readonly firings: readonly FiringRecord[] }) {
  const [picked, setPicked] = useState<string | null>(null);
  const firing = firings.find((one) => one.id === picked) ?? firings.at(-1)!;
  return (
    <section className="stack" aria-label="The sheet">
      <div className="tile-firing">
        <Select
          label="Firing"
          choices={firings.map((one) => ({ id: one.id, label: one.name }))}
          value={firing.id}
          onChange={setPicked}
        />
      </div>
      <div className="row">
        <LinkButton look="primary" to={phoneSheetPath(study, firing.id)}>
          Open the sheet here
        </LinkButton>
      </div>
    </section>
  );
}
