import type { ReferenceModel } from '../reference/types.ts';
import { RequirementError } from '../requirement.ts';
import { randomStream } from '../statistics/random.ts';
import { carriedWords } from './carried.ts';
import { countVerdicts, type Verdicts } from './count-verdicts.ts';
import { redrawnWords, timesDrawn } from './draw-references.ts';
import type { Judge } from './judge.ts';
import { blockCoordinates, blockProducts } from './kernel-block.ts';
import { distancesFor, type KernelDistances, placeBlock } from './kernel-run.ts';
import { samplerOf } from './sampler.ts';
import { uncertaintySentence } from './sentence.ts';
import { cloudOf, intervalOf, throughFalling } from './summary.ts';
import type { GroupUncertainty, PlacementUncertainty, Progress, UncertaintyRequest } from './types.ts';
import { worldOf, worldsOf } from './worlds.ts';

/** Draws placed between two reports of progress. */
const BLOCK = 256;
/** Draws shown as a cloud. */
const SHOWN = 300;
/** Share of draws in which an oxide may be spent before a warning. */
const NOTABLE = 0.05;

/**
 * Carries uncertainties through drawing off and placing by seeded Monte Carlo (JCGM 101:2008): every draw is a
 * composition within its uncertainties, placed against every group as `placeSample` places it; references' values below
 * detection are drawn too (see `drawReferences`), a new set for every block. A generator: each
 * step places a block of draws and yields progress, the return value is the result; stop calling it to cancel.
 * The same seed gives the same result everywhere. Throws with fewer than 100 draws, and as `samplerOf` does.
 * @example
 * of = (value) => ({ value, limit: null, sigma: value / 50, sigmaBasis: 'stated', resolution: null })
 * sherd = (id, lead) => ({ id, label: id, group: 'g', role: 'reference', measured: 'paint', spots: 1, rawTotal: 100, amounts: { PbO: of(lead), SiO2: of(100 - lead) } })
 * settings = { groups: ['g'], parts: null, scale: 'log-ratio', covariance: { kind: 'auto' }, replacement: { fraction: 0.65, limits: {} } }
 * model = fitReference([58, 60, 61, 63, 64, 66, 59].map((lead, i) => sherd(`${i}`, lead)), settings, { g: 'Red' })
 * request = { sample: sherd('tile', 62), slip: null, settings: { ...DEFAULT_UNCERTAINTY, draws: 500 } }
 * finishDraws(drawPlacements(model, request)).groups[0].nearest // 1
 */
export function* drawPlacements(
  model: ReferenceModel,
  request: UncertaintyRequest,
): Generator<Progress, PlacementUncertainty, void> {
  const { draws, seed } = request.settings;
  if (!(Number.isInteger(draws) && draws >= 100))
    throw new RequirementError(`an interval from draws needs at least 100 of them; found ${draws}`);
  const id = request.sample.id;
  const base = worldOf(model, id);
  const sampler = samplerOf(model, request, randomStream(seed));
  const nextWorld = worldsOf(base, id, randomStream(seed));
  const distances = distancesFor(model.groups.length, draws);
  const verdicts = { inside: model.groups.map(() => 0), outside: model.groups.map(() => 0) };
  const fractions = new Float64Array(draws);
  const { kernel } = base;
  const scores = new Float64Array(kernel.loadings.length * draws);
  const most = Math.min(BLOCK, Math.ceil(draws / timesDrawn(model)));
  for (let first = 0; first < draws; first += most) {
    const size = Math.min(most, draws - first);
    const parts = new Float64Array(model.parts.length * size);
    for (let i = 0; i < size; i++) fractions[first + i] = sampler.draw(parts, { i, stride: size });
    const world = nextWorld();
    const y = blockCoordinates(world.kernel, parts, size);
    placeBlock(world.kernel, y, { out: distances, first });
    countVerdicts(world.judges, y, { distances, first, size, verdicts });
    // Scores stay on the components of the references as they are, which the figure shows.
    const shown = world === base ? y : blockCoordinates(kernel, parts, size);
    const block = blockProducts(shown, kernel.loadings, kernel.origin);
    for (let k = 0; k < kernel.loadings.length; k++)
      scores.set(block.subarray(k * size, (k + 1) * size), k * draws + first);
    yield { done: first + size, of: draws };
  }
  return summarise(model, request, {
    distances,
    fractions,
    scores,
    spent: sampler.spent,
    verdicts,
    judges: base.judges,
  });
}

/**
 * Runs a generator of draws to its end and gives its result.
 * @example
 * finishDraws((function* () { yield 1; return 2; })()) // 2
 */
export function finishDraws<Result>(steps: Generator<unknown, Result, void>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

interface Drawn {
  readonly distances: KernelDistances;
  readonly fractions: Float64Array;
  /** Component by component: draw i of component k at [k·draws + i]. */
  readonly scores: Float64Array;
  readonly spent: Float64Array;
  readonly verdicts: Verdicts;
  readonly judges: readonly (Judge | null)[];
}

function summarise(model: ReferenceModel, request: UncertaintyRequest, drawn: Drawn): PlacementUncertainty {
  const { sample, slip, settings } = request;
  const nearest = nearestShares(drawn.distances, model.groups.length);
  const groups = model.groups.map((group, g): GroupUncertainty => {
    const judge = drawn.judges[g]!;
    const share = (counts: readonly number[]) => (judge ? counts[g]! / settings.draws : null);
    return {
      group: group.id,
      name: group.name,
      ...groupDraws(drawn.distances, g, judge),
      inside: share(drawn.verdicts.inside),
      outside: share(drawn.verdicts.outside),
      nearest: nearest[g]!,
    };
  });
  const spent = model.parts
    .map((oxide, j) => ({ oxide, share: drawn.spent[j]! / settings.draws }))
    .filter(({ share }) => share > 0);
  const { id, label } = sample;
  return {
    id,
    label,
    draws: settings.draws,
    seed: settings.seed,
    groups,
    fraction: slip && intervalOf(drawn.fractions),
    scores: cloudOf(drawn.scores, { draws: settings.draws, shown: SHOWN }),
    spent,
    carried: [...carriedWords(request, model.settings.replacement.fraction), ...redrawnWords(model)],
    warnings: spent.filter(({ share }) => share > NOTABLE).map(spentWords),
    sentence: uncertaintySentence({ label, draws: settings.draws, groups }),
  };
}

const spentWords = ({ oxide, share }: { oxide: string; share: number }) =>
  `${oxide} came to nothing in ${Math.round(100 * share)} % of draws and was drawn from below its uncertainty: leave it out of the comparison, or draw off less.`;

function groupDraws({ distance2, d2, draws }: KernelDistances, g: number, judge: Judge | null) {
  const [from, to] = [g * draws, (g + 1) * draws];
  // From here on the draws of this group are no longer in order.
  const distance = intervalOf(distance2.subarray(from, to), Math.sqrt);
  const spread = Number.isNaN(d2[from]!) ? null : intervalOf(d2.subarray(from, to));
  const membership = spread && judge?.membership ? throughFalling(spread, judge.membership) : null;
  return { distance, d2: spread, membership };
}

function nearestShares({ distance2, draws }: KernelDistances, groups: number): number[] {
  const counts = new Array<number>(groups).fill(0);
  for (let i = 0; i < draws; i++) {
    let best = 0;
    for (let g = 1; g < groups; g++) if (distance2[g * draws + i]! < distance2[best * draws + i]!) best = g;
    counts[best] = counts[best]! + 1;
  }
  return counts.map((n) => n / draws);
}
