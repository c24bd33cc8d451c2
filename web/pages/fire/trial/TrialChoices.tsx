import type { FoundFactor } from '../../../../api/contract/trial.ts';
import type { Outcome } from '../../../../api/domain/trials/types.ts';
import { count } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import type { TrialChoice } from './useTrial.ts';

const OUTCOMES: readonly { id: Outcome; label: string }[] = [
  { id: 'glossy', label: 'Glossy or not' },
  { id: 'satin-or-better', label: 'Satin or better, or matt' },
  { id: 'grade', label: 'Matt, satin, glossy as three steps' },
  { id: 'share', label: 'Glassy share of the area' },
];

/** What is looked at, and for which factors. */
export function TrialChoices({
  choice,
  outcomes = true,
}: {
  readonly choice: TrialChoice;
  readonly outcomes?: boolean;
}) {
  return (
    <div className="stack">
      {outcomes && (
        <div className="tile-firing">
          <Select label="Outcome" choices={OUTCOMES} value={choice.outcome} onChange={choice.setOutcome} />
        </div>
      )}
      <fieldset className="choices">
        <legend className="label">Factors looked at</legend>
        <div className="row">
          {choice.found.map((one) => (
            <Tick
              key={one.factor.name}
              isSelected={choice.chosen.includes(one.factor.name)}
              onChange={(on) => choice.toggle(one.factor.name, on)}
            >
              {one.factor.name} <span className="hint">{aboutFactor(one)}</span>
            </Tick>
          ))}
        </div>
        {choice.found
          .filter((one) => choice.chosen.includes(one.factor.name))
          .flatMap((one) => one.notes)
          .map((note) => (
            <p key={note} className="faint small">
              {note}
            </p>
          ))}
      </fieldset>
      <TilesLooked choice={choice} />
    </div>
  );
}

/** Which tiles count: all of them, until some are taken out. */
function TilesLooked({ choice }: { readonly choice: TrialChoice }) {
  const { tiles, without, setWithout } = choice;
  const kept = tiles.length - without.length;
  return (
    <details>
      <summary>
        Tiles looked at: {without.length === 0 ? `all ${tiles.length}` : `${kept} of ${tiles.length}`}
      </summary>
      <fieldset className="choices">
        <legend className="unseen">Tiles looked at</legend>
        <div className="row">
          {tiles.map(({ id, label, firingName }) => (
            <Tick
              key={id}
              isSelected={!without.includes(id)}
              onChange={(on) => setWithout(on ? without.filter((one) => one !== id) : [...without, id])}
            >
              {label} <span className="hint">{firingName ?? 'not fired yet'}</span>
            </Tick>
          ))}
        </div>
      </fieldset>
    </details>
  );
}

/** Settings in words of their own hold commas, so they are parted otherwise. */
function aboutFactor({ factor, values, zones }: FoundFactor): string {
  const many = values.length > 4;
  const ofZones = count(zones, 'zone');
  if (factor.kind === 'category')
    return `${many ? `${values.length} settings` : values.join(' · ')}; ${ofZones}`;
  const settings = many ? `${values[0]} to ${values.at(-1)}` : values.join(', ');
  const unit = factor.name.includes(factor.unit) ? '' : ` ${factor.unit}`;
  return `${settings}${unit}; ${ofZones}`;
}
