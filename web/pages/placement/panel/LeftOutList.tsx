import { Button } from '../../../parts/Button.tsx';
import type { PartProps } from './ReckoningChoice.tsx';

/** Sherds left out by hand, each with its reason, and the way back in. */
export function LeftOutList({ settings, onChange }: PartProps) {
  if (settings.leaveOut.length === 0) return null;
  const back = (specimen: string) =>
    onChange({ leaveOut: settings.leaveOut.filter((one) => one.specimen !== specimen) });
  return (
    <section aria-labelledby="left-out">
      <h3 id="left-out" className="label">
        Left out by hand
      </h3>
      <ul className="plain-list">
        {settings.leaveOut.map(({ specimen, label, reason }) => (
          <li key={specimen} className="row">
            <span>
              {label} <span className="faint small">{reason}</span>
            </span>
            <Button look="quiet" aria-label={`Take ${label} back in`} onPress={() => back(specimen)}>
              Take back in
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
