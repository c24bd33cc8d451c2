import type { ChancePoint, Factor } from './types.ts';
import { levelInWords } from './unit-words.ts';

/** A band at least this wide (80 of 100) tells next to nothing. */
const TOO_WIDE = 0.8;

/**
 * Where along a curve the band is too wide to tell the chance, in plain words: one sentence a stretch, with all that
 * it leaves open.
 *
 * @example
 * const coats = { name: 'coats', kind: 'number', unit: 'coats', step: 1 }
 * doubtInWords(coats, [{ at: 3, low: 0.2, high: 0.6 }, { at: 4, low: 0.08, high: 0.995 }]) // ['At 4 coats these tiles cannot tell: anything from 8 % to over 99 %.']
 */
export function doubtInWords(factor: Factor, points: readonly Omit<ChancePoint, 'chance'>[]): string[] {
  return stretchesOf(factor, points).map((run) => {
    const low = percent(Math.min(...run.map((p) => p.low)));
    const high = percent(Math.max(...run.map((p) => p.high)));
    return `${whereInWords(factor, run)} these tiles cannot tell: anything from ${low} to ${high}.`;
  });
}

type Band = Omit<ChancePoint, 'chance'>;

/** Neighbours along a number go together; levels stand by themselves. */
function stretchesOf(factor: Factor, points: readonly Band[]): Band[][] {
  const runs: Band[][] = [];
  for (const [i, point] of points.entries()) {
    if (point.high - point.low < TOO_WIDE) continue;
    const goesOn = factor.kind === 'number' && i > 0 && runs.at(-1)?.at(-1) === points[i - 1];
    if (goesOn) runs.at(-1)!.push(point);
    else runs.push([point]);
  }
  return runs;
}

function whereInWords(factor: Factor, run: readonly Pick<ChancePoint, 'at'>[]): string {
  const [first, last] = [run[0]!.at, run.at(-1)!.at];
  if (factor.kind === 'category') return `With ${levelInWords(factor, first)}`;
  const [from, to] = [plain(Number(first)), plain(Number(last))];
  if (from === to) return `At ${levelInWords(factor, from)}`;
  const unit = factor.name.endsWith(`(${factor.unit})`) ? '' : ` ${factor.unit}`;
  return factor.name === factor.unit
    ? `From ${from} to ${to}${unit}`
    : `With ${factor.name} from ${from} to ${to}${unit}`.trimEnd();
}

const plain = (value: number): number => Number(value.toPrecision(3));

/** The ends of a band are no better known than to a hundredth. */
function percent(share: number): string {
  if (share < 0.01) return 'under 1 %';
  if (share > 0.99) return 'over 99 %';
  return `${Math.round(100 * share)} %`;
}
