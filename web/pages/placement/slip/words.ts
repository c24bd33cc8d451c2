import type { Comparison } from '../../../../api/contract/placement.ts';
import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import { likeWithLike, type SlipState } from '../../../../api/domain/slip/slip-state.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import type { Reach } from './placer.ts';

/** A share by mass as it is read: three digits, as the slider steps. */
export const showShare = (f: number): string => f.toFixed(3);

/** `0.250 ± 0.012` where an uncertainty is known. */
export const shareWords = ({ f, sigma }: Pick<SlipChoice, 'f' | 'sigma'>): string =>
  sigma > 0 ? `${showShare(f)} ± ${showShare(sigma)}` : showShare(f);

/** How far the slip can be drawn off, and which oxide says so. */
export function limitWords({ limit }: Reach): string {
  const { f, oxide, strict, strictOxide } = limit;
  if (oxide === null) return `No oxide sets a bound: up to ${showShare(f)}.`;
  const nothing =
    strictOxide !== null && strict < f
      ? ` ${showAnalyte(strictOxide)} comes to nothing at ${showShare(strict)}.`
      : '';
  return `At most ${showShare(f)}: there ${showAnalyte(oxide)} falls below nothing by twice its standard uncertainty.${nothing}`;
}

/** Whether both sides have their slip in or out. */
export function sidesOf(
  { model, slip }: Pick<Comparison, 'model' | 'slip'>,
  label: string,
  own: SlipState,
): { alike: boolean; sentence: string } {
  const out = new Map((slip ?? []).map((drawn) => [drawn.specimen, drawn]));
  const states = model.members.map(({ id }): SlipState => {
    const drawn = out.get(id);
    return drawn ? { kind: 'out', f: drawn.f, from: drawn.from } : { kind: 'in' };
  });
  return likeWithLike({ name: label, states: [own] }, { name: 'the references', states });
}

export const stateOf = (choice: Pick<SlipChoice, 'f' | 'from'> | null): SlipState =>
  choice === null || choice.f === 0 ? { kind: 'in' } : { kind: 'out', f: choice.f, from: choice.from };

/** How many standard uncertainties off, with its sign: `+1.2`, `−0.4`, `0.0`. */
export function showOff(z: number): string {
  const size = Math.abs(z).toFixed(1);
  return size === '0.0' ? size : `${z < 0 ? '−' : '+'}${size}`;
}
