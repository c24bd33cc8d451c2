import { memo } from 'react';
import type { Comparison } from '../../../api/contract/placement.ts';
import { groupSpokenOf, placementSentence } from '../../../api/domain/placement/sentence.ts';
import type { Placement } from '../../../api/domain/placement/types.ts';
import { Button } from '../../parts/Button.tsx';
import { Tag } from '../../parts/Notice.tsx';
import { Select } from '../../parts/Select.tsx';
import type { ViewState } from './view-state.ts';
import { VERDICTS } from './words.ts';

export interface LookProps {
  readonly result: Comparison;
  readonly view: ViewState;
  readonly onView: (change: Partial<ViewState>) => void;
}
const NEAREST = 'nearest';

interface ChoiceProps extends LookProps {
  readonly chosen: string;
}

/** Made again only when there is something else to choose from: the sentence beneath follows a slider. */
const VerdictChoice = memo(function VerdictChoice({ result, view, onView, chosen }: ChoiceProps) {
  const { placements, model } = result;
  const at = placements.findIndex(({ id }) => id === chosen);
  const go = (step: number) =>
    onView({ replica: placements[(at + step + placements.length) % placements.length]!.id });
  return (
    <div className="verdict-choice">
      <Select
        label="Replica"
        choices={placements.map(({ id, label }) => ({ id, label }))}
        value={chosen}
        onChange={(replica) => onView({ replica })}
      />
      <Select
        label="Against"
        choices={[
          { id: NEAREST, label: 'The group it fits best' },
          ...model.groups.map(({ id, name }) => ({ id, label: name })),
        ]}
        value={view.against ?? NEAREST}
        onChange={(id) => onView({ against: id === NEAREST ? null : id })}
      />
      {placements.length > 1 && (
        <span className="row">
          <Button onPress={() => go(-1)}>Previous</Button>
          <Button onPress={() => go(1)}>Next</Button>
        </span>
      )}
    </div>
  );
}, sameChoice);

function sameChoice(one: ChoiceProps, other: ChoiceProps): boolean {
  const [before, after] = [one.result.placements, other.result.placements];
  return (
    one.chosen === other.chosen &&
    one.view.against === other.view.against &&
    one.onView === other.onView &&
    one.result.model === other.result.model &&
    before.length === after.length &&
    before.every(({ id, label }, at) => id === after[at]!.id && label === after[at]!.label)
  );
}

/** The sentence first: what a replica is, against which group. */
export function VerdictSection(at: LookProps & { readonly placement: Placement }) {
  const { result, view, placement } = at;
  const group = placement.groups.find((one) => one.group === view.against) ?? groupSpokenOf(placement.groups);
  const sentence = view.against === null ? placement.sentence : placementSentence(placement, view.against);
  const remarks = result.remarks.filter(({ specimen }) => specimen === placement.id);
  return (
    <section className="sheet verdict" aria-labelledby="verdict">
      <VerdictChoice result={result} view={view} onView={at.onView} chosen={placement.id} />
      <div role="status">
        <h2 id="verdict" className="unseen">
          Verdict on {placement.label}
        </h2>
        {group && <Tag kind={VERDICTS[group.verdict].kind}>{VERDICTS[group.verdict].label}</Tag>}
        <p className="sentence">{sentence}</p>
      </div>
      <p className="small faint">
        {placement.spots === 1 ? 'One spot.' : `${placement.spots} spots averaged.`}{' '}
        {[...new Set(remarks.map(({ message }) => message))].join(' ')}
      </p>
    </section>
  );
}
