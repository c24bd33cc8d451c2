import { closure } from '../composition/closure.ts';
import { refitReference } from '../reference/fit-members.ts';
import { orRefusal } from '../reference/spread.ts';
import type { ReferenceModel } from '../reference/types.ts';
import type { RandomStream } from '../statistics/random.ts';
import { rangeBelow } from './draw-amount.ts';

/** Sherds fitted in all draws of the references together, and the fewest and most times they are drawn. */
const SHERDS = 10_000;
const FEWEST = 5;
const MOST = 50;

/**
 * How many times the references are drawn anew: once where nothing of theirs is below detection, else 5 to 50 times,
 * fewer the more sherds there are, whose scatter then evens itself out.
 * @example
 * timesDrawn({ replaced: [], members: [] }) // 1
 * timesDrawn({ replaced: [{}], members: { length: 40 } }) // 50
 * timesDrawn({ replaced: [{}], members: { length: 4000 } }) // 5
 */
export function timesDrawn({ replaced, members }: Pick<ReferenceModel, 'replaced' | 'members'>): number {
  if (replaced.length === 0) return 1;
  return Math.max(FEWEST, Math.min(MOST, Math.floor(SHERDS / members.length)));
}

/**
 * The model with every reference value below detection drawn anew (see `rangeBelow`) and everything fitted to it: a
 * sample's value below detection is drawn so too, and would stand out of references that all hold one and the same
 * share of the limit (multiple imputation: Rubin 1987, DOI 10.1002/9780470316696). Detected oxides keep their ratios.
 * Where a draw cannot be fitted, or a group loses its spread, the model is given back as it is.
 * @example
 * const of = (value, limit) => ({ value, limit, sigma: null, sigmaBasis: null, resolution: null });
 * const sherd = (id, lead, tin) => ({ id, label: id, group: 'g', role: 'reference', measured: 'paint', spots: 1, rawTotal: 100, amounts: { PbO: of(lead, null), SiO2: of(100 - lead, null), SnO2: tin } });
 * const settings = { groups: ['g'], parts: null, scale: 'log-ratio', covariance: { kind: 'auto' }, replacement: { fraction: 0.65, limits: {} } };
 * const model = fitReference([sherd('a', 50, of(1, null)), sherd('b', 60, of(2, null)), sherd('c', 70, of(null, 0.1))], settings, {});
 * const drawn = drawReferences(model, randomStream(1));
 * drawn.members[0].parts[2] === model.members[0].parts[2] // true
 * drawn.members[2].parts[2] < 0.1 && drawn.members[2].parts[2] > 0.029 // true
 * drawn.members[2].parts[0] / drawn.members[2].parts[1] // 2.333333
 */
export function drawReferences(model: ReferenceModel, random: RandomStream): ReferenceModel {
  const { fraction } = model.settings.replacement;
  const { least, most } = rangeBelow(fraction);
  const compositions = new Map(model.members.map((member) => [member.id, [...member.parts]]));
  for (const { sample, oxide, by } of model.replaced) {
    const parts = compositions.get(sample);
    if (parts)
      parts[model.parts.indexOf(oxide)] = ((most - (most - least) * random.uniform()) * by) / fraction;
  }
  const redrawn = new Set(model.replaced.map(({ sample }) => sample));
  const drawn = model.members.map(({ id, parts }) =>
    redrawn.has(id) ? closure(compositions.get(id)!) : parts,
  );
  const { value } = orRefusal(() => refitReference(model, drawn));
  const kept = value?.groups.every(
    (group, g) => (group.spread === null) === (model.groups[g]!.spread === null),
  );
  return value && kept ? value : model;
}

/**
 * What was drawn of the references, in words; nothing where nothing of theirs is below detection.
 * @example
 * redrawnWords({ replaced: [{ oxide: 'CuO', sample: 'a' }, { oxide: 'CuO', sample: 'b' }], members: [1, 2] }) // ['Of the references 2 values below detection (CuO) are drawn anew below their limits 50 times, and everything is fitted to them each time.']
 */
export function redrawnWords(model: Pick<ReferenceModel, 'replaced' | 'members'>): string[] {
  const { length } = model.replaced;
  if (length === 0) return [];
  const oxides = [...new Set(model.replaced.map(({ oxide }) => oxide))].join(', ');
  const what =
    length === 1
      ? `1 value below detection (${oxides}) is`
      : `${length} values below detection (${oxides}) are`;
  return [
    `Of the references ${what} drawn anew below ${length === 1 ? 'its limit' : 'their limits'} ${timesDrawn(model)} times, and everything is fitted to ${length === 1 ? 'it' : 'them'} each time.`,
  ];
}
