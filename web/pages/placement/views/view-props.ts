import type { LookProps } from '../Verdict.tsx';

export interface OtherViewProps extends LookProps {
  /** Place of each ware group in the study's order, which settles its mark and colour. */
  readonly slots: Readonly<Record<string, number>>;
}
