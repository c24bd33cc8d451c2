import { type Precision, showUncertainty, showValue } from './numbers.ts';

export interface NumberWithUnitProps extends Precision {
  readonly value: number | null;
  readonly unit?: string;
  /** What to say where there is no value. */
  readonly none?: string;
}

/** A figure, what may be wrong with it, and what it is measured in: `36.7 ± 0.5 wt%`. */
export function NumberWithUnit({ value, unit, none = 'unknown', ...precision }: NumberWithUnitProps) {
  if (value === null) return <span className="faint">{none}</span>;
  return (
    <span className="number">
      {showValue(value, precision)}
      {precision.uncertainty ? <> ± {showUncertainty(precision.uncertainty)}</> : null}
      {unit && <span className="unit"> {unit}</span>}
    </span>
  );
}
