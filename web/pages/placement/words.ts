import type { Verdict } from '../../../api/domain/placement/types.ts';
import type { CovarianceChoice, FallenOut, Scale } from '../../../api/domain/reference/types.ts';
import { count, showAnalyte, showSignificant } from '../../parts/numbers.ts';
import type { Choice } from '../../parts/Select.tsx';

export const VERDICTS: Readonly<
  Record<Verdict, { readonly label: string; readonly kind: 'done' | 'caution' | 'error' | 'plain' }>
> = {
  inside: { label: 'Cannot be told apart', kind: 'done' },
  borderline: { label: 'At the edge', kind: 'caution' },
  outside: { label: 'Outside', kind: 'error' },
  unknown: { label: 'Cannot be judged', kind: 'plain' },
};

export const SCALES: readonly Choice<Scale>[] = [
  {
    id: 'log-ratio',
    label: 'Log-ratios',
    hint: 'Each oxide against all the others; free of the fixed total',
  },
  {
    id: 'log10',
    label: 'Logarithms of wt%',
    hint: 'Older practice; totals fixed at 100 tie oxides together',
  },
  {
    id: 'standardised',
    label: 'Standardised wt%',
    hint: 'Each oxide in its own standard deviations; major oxides lead',
  },
];

export const COVARIANCES: readonly (Choice & { readonly choice: CovarianceChoice })[] = [
  {
    id: 'auto',
    label: 'What n and p allow',
    hint: 'Each group by its own numbers; said beside each answer',
    choice: { kind: 'auto' },
  },
  {
    id: 'sample',
    label: 'Sample covariance',
    hint: 'All directions; refused where sherds are too few',
    choice: { kind: 'sample' },
  },
  {
    id: 'components',
    label: 'A few components',
    hint: 'The first principal components of the references',
    choice: { kind: 'components', count: 2 },
  },
  {
    id: 'oas',
    label: 'Shrinkage (OAS)',
    hint: 'Ranks only, no probability',
    choice: { kind: 'shrinkage', target: 'oas' },
  },
  {
    id: 'ledoit-wolf',
    label: 'Shrinkage (Ledoit–Wolf)',
    hint: 'Ranks only, no probability',
    choice: { kind: 'shrinkage', target: 'ledoit-wolf' },
  },
];
export const covarianceId = (choice: CovarianceChoice): string =>
  choice.kind === 'shrinkage' ? choice.target : choice.kind;

const NAMED = 3;
/** Why an oxide is not compared: `not measured in Tile 1, Tile 2, Tile 3 and 3 more`. */
export function fallenOutReason({ because, specimens }: FallenOut): string {
  if (because === 'not chosen') return '';
  if (because === 'constant') return 'the same in every sherd, or found in none';
  const named = specimens.slice(0, NAMED).join(', ');
  const more = specimens.length > NAMED ? ` and ${specimens.length - NAMED} more` : '';
  return `${because === 'not measured' ? 'not measured in' : 'below detection without a limit in'} ${named}${more}`;
}

/** A probability to two figures; tiny ones only as tiny, since they rest on the far tail of an assumed shape. */
export function showProbability(p: number | null): string | null {
  if (p === null) return null;
  return p < 0.001 ? '< 0.001' : showSignificant(p, p < 0.1 ? 2 : 3);
}
export const showNumber = (value: number | null): string | null =>
  value === null ? null : showSignificant(value);
export const percent = (share: number): string => `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`;
export const sherds = (n: number): string => count(n, 'sherd');
export const day = (instant: string): string =>
  new Date(instant).toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });

/** A text with the formulas of these oxides in it written with low counts; other digits stay as they are. */
export function withFormulas(text: string, oxides: readonly string[]): string {
  const formulas = [...oxides].sort((one, other) => other.length - one.length);
  if (formulas.length === 0) return text;
  return text.replace(new RegExp(`\\b(${formulas.join('|')})\\b`, 'g'), (formula) => showAnalyte(formula));
}
