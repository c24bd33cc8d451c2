import { Label, ProgressBar } from 'react-aria-components';

/** How far long work has come. `share` is 0–1; null when nobody knows yet. */
export function Progress(at: {
  readonly label: string;
  readonly share: number | null;
  readonly words?: string;
}) {
  return (
    <ProgressBar
      className={at.share === null ? 'progress unknown' : 'progress'}
      isIndeterminate={at.share === null}
      value={(at.share ?? 0) * 100}
      {...(at.words ? { valueLabel: at.words } : {})}
    >
      {({ percentage, valueText }) => (
        <>
          <span className="row">
            <Label className="label">{at.label}</Label>
            <span className="faint small">{at.share === null ? at.words : valueText}</span>
          </span>
          <div className="bar">
            <div style={at.share === null ? undefined : { width: `${percentage ?? 0}%` }} />
          </div>
        </>
      )}
    </ProgressBar>
  );
}
