import { Form } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { PlanKind } from '../../../../api/domain/trials/types.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Select } from '../../../parts/Select.tsx';
import { OneOf } from '../../../parts/Tick.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import type { PageProps } from '../../../paths.ts';
import { useMakePlan } from '../../../queries/fire.ts';
import { usePut } from '../parts/usePut.ts';
import { firePath, planPath } from '../paths.ts';
import { BLANK_FACTOR, type FactorForm, LADDER, type PlanForm, readPlan } from './plan-form.ts';

const KINDS: readonly { id: PlanKind; label: string; hint: string }[] = [
  { id: 'ladder', label: 'A ladder', hint: 'one factor in steps, such as coats' },
  { id: 'one-at-a-time', label: 'One factor at a time', hint: 'each against the same base' },
  { id: 'full', label: 'Every combination', hint: 'tells factors apart, and how they act together' },
  { id: 'fraction', label: 'A fraction of all combinations', hint: 'fewer tiles; says what it cannot tell' },
];
const UNITS = [
  { id: 'zone', label: 'zones of a tile' },
  { id: 'tile', label: 'whole tiles' },
  { id: 'firing', label: 'whole firings' },
] as const;

/** Draws up a set of tiles. */
export function NewPlanPage({ study }: PageProps) {
  const make = useMakePlan(study);
  const [, navigate] = useLocation();
  const draft = useDraft<PlanForm>(`plan.${study}.new`, LADDER);
  const form = draft.value;
  const set = usePut(draft);
  const submit = () =>
    make.mutate(readPlan(form, Date.now() % 1_000_000), {
      onSuccess: (plan) => {
        draft.clear();
        navigate(planPath(study, plan.id));
      },
    });
  return (
    <>
      <PageHead
        title="New plan"
        lead="What is varied, on how many tiles, in how many firings."
        up={{ to: firePath(study, '/plans'), label: 'Plans' }}
      />
      <Form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        {draft.restored && <Notice>What you had typed before is still here, not yet drawn up.</Notice>}
        <Field label="Name" value={form.name} onChange={(name) => set({ name })} isRequired />
        <OneOf label="Kind" choices={KINDS} value={form.kind} onChange={(kind) => set({ kind })} />
        <Factors factors={form.factors} onChange={(factors) => set({ factors })} />
        <Sizes form={form} set={set} />
        <ErrorNotice error={make.error} title="No plan can be drawn up" />
        <div className="row">
          <Button look="primary" type="submit" isPending={make.isPending}>
            Draw up the plan
          </Button>
          <LinkButton to={firePath(study, '/plans')}>Cancel</LinkButton>
          {draft.restored && <Button onPress={draft.clear}>Forget what was typed</Button>}
        </div>
      </Form>
    </>
  );
}

function Factors(at: {
  readonly factors: readonly FactorForm[];
  readonly onChange: (factors: FactorForm[]) => void;
}) {
  const put = (i: number, part: Partial<FactorForm>) =>
    at.onChange(at.factors.map((factor, j) => (i === j ? { ...factor, ...part } : factor)));
  return (
    <fieldset className="choices stack">
      <legend className="label">Factors</legend>
      {at.factors.map((factor, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a factor being typed has no identity but its place
        <div key={i} className="fields sheet">
          <Field
            label={`Factor ${i + 1}`}
            hint="coats and thickness have places of their own on a zone"
            value={factor.name}
            onChange={(name) => put(i, { name })}
            isRequired
          />
          <Field
            label={`Settings of factor ${i + 1}`}
            hint="In order, parted by commas: 1, 2, 3 or raw, roasted"
            value={factor.levels}
            onChange={(levels) => put(i, { levels })}
            isRequired
          />
          <Field
            label={`Unit of factor ${i + 1}`}
            value={factor.unit}
            onChange={(unit) => put(i, { unit })}
          />
          <Select
            label={`Factor ${i + 1} changes between`}
            choices={UNITS}
            value={factor.at}
            onChange={(unit) => put(i, { at: unit })}
          />
          {at.factors.length > 1 && (
            <div>
              <Button onPress={() => at.onChange(at.factors.filter((_, j) => j !== i))}>
                Take out factor {i + 1}
              </Button>
            </div>
          )}
        </div>
      ))}
      <div>
        <Button onPress={() => at.onChange([...at.factors, BLANK_FACTOR])}>Add a factor</Button>
      </div>
    </fieldset>
  );
}

function Sizes({ form, set }: { readonly form: PlanForm; readonly set: (part: Partial<PlanForm>) => void }) {
  const sizes = [
    ['tiles', 'Tiles', 100],
    ['rows', 'Rows of zones on a tile', 26],
    ['columns', 'Columns of zones on a tile', 26],
    ['firings', 'Firings', 20],
    ['replicates', 'Times each setting is repeated', 20],
  ] as const;
  return (
    <div className="fields">
      {sizes.map(([key, label, max]) => (
        <NumberField
          key={key}
          label={label}
          value={form[key]}
          onChange={(value) => set({ [key]: value ?? 1 })}
          {...{ min: 1, max, whole: true }}
        />
      ))}
    </div>
  );
}
