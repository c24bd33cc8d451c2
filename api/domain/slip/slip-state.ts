/** Whether the slip is still in a composition, or was drawn off, and by which estimate. */
export type SlipState =
  | { readonly kind: 'in' }
  | { readonly kind: 'out'; readonly f: number; readonly from: string };

/** How many of one side have their slip in and out. */
export interface SlipSide {
  readonly name: string;
  readonly states: readonly SlipState[];
}

/**
 * Says for both sides of a comparison whether slip is in or out, and warns where they are not alike.
 * @example
 * out = { kind: 'out', f: 0.2, from: 'tracers' }
 * likeWithLike({ name: 'Tile 3', states: [out] }, { name: 'the references', states: [{ kind: 'in' }, { kind: 'in' }] }).alike // false
 * likeWithLike({ name: 'Tile 3', states: [out] }, { name: 'the references', states: [out] }).sentence // 'Tile 3: slip drawn off (f = 0.20, from tracers); the references: slip drawn off (f = 0.20, from tracers). Like is compared with like.'
 */
export function likeWithLike(one: SlipSide, other: SlipSide): { alike: boolean; sentence: string } {
  const kinds = new Set([...one.states, ...other.states].map((state) => state.kind));
  const alike = kinds.size <= 1;
  const verdict = alike
    ? 'Like is compared with like.'
    : 'These are not alike: distances and probabilities mix paint with slip in it and paint without.';
  return { alike, sentence: `${sideWords(one)}; ${sideWords(other)}. ${verdict}` };
}

function sideWords({ name, states }: SlipSide): string {
  const out = states.filter((state) => state.kind === 'out');
  if (out.length === 0) return `${name}: slip in`;
  const fractions = out.map((state) => state.f);
  const [least, most] = [Math.min(...fractions).toFixed(2), Math.max(...fractions).toFixed(2)];
  const f = `f = ${least === most ? least : `${least}–${most}`}, from ${[...new Set(out.map((s) => s.from))].join(' and ')}`;
  const some = out.length < states.length ? ` in ${out.length} of ${states.length}` : '';
  return `${name}: slip drawn off${some} (${f})`;
}
