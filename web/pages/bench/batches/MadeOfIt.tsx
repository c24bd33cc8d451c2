import { Tick } from '../../../parts/Tick.tsx';
import { useSpecimens } from '../../../queries/specimens.ts';

/** Which replicas were painted with this batch, so that their analyses can be set beside its prediction. */
export function MadeOfIt(at: {
  readonly study: string;
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
}) {
  const replicas = useSpecimens(at.study, { kind: 'replica', limit: 500 }).data?.rows ?? [];
  if (replicas.length === 0) return null;
  const toggle = (id: string, on: boolean) =>
    at.onChange(on ? [...at.chosen, id] : at.chosen.filter((one) => one !== id));
  return (
    <fieldset className="choices tick-across">
      <legend className="label">Replicas painted with it</legend>
      <p className="hint">A replica is made of one batch: choosing it here takes it from another.</p>
      <div className="row">
        {replicas.map(({ id, label }) => (
          <Tick key={id} isSelected={at.chosen.includes(id)} onChange={(on) => toggle(id, on)}>
            {label}
          </Tick>
        ))}
      </div>
    </fieldset>
  );
}
