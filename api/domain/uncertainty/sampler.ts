import type { Amounts } from '../composition/types.ts';
import type { ReferenceModel } from '../reference/types.ts';
import { RequirementError } from '../requirement.ts';
import type { RandomStream } from '../statistics/random.ts';
import { type DrawableAmount, drawAmount, drawable, drawStudent } from './draw-amount.ts';
import type { CarriedFraction, UncertaintyRequest } from './types.ts';

/** Draws compositions of one sample on a model's oxides, slip drawn off. */
export interface Sampler {
  /** Writes one closed composition (wt%) column by column: part j of draw i at parts[j·stride + i]; returns f. */
  readonly draw: (parts: Float64Array, at: { readonly i: number; readonly stride: number }) => number;
  /** How often each oxide of the model fell to nothing and was drawn from below its uncertainty. */
  readonly spent: Float64Array;
}

/** One side of the mixture: its oxides ready to be drawn, and which of them the model compares. */
interface Side {
  readonly amounts: readonly DrawableAmount[];
  /** Sum to which the closed analysis adds up. */
  readonly total: number;
  readonly at: readonly number[];
  readonly drawn: Float64Array;
}

const MOST = 0.99;
const TRIES = 1000;
const SPENT_AT = 2;
/** About the middle of the limit is anything from 0 to it. */
const WHOLE = 0.5;

/**
 * Prepares draws of a sample: every oxide within its uncertainty (errors independent before closure, so each draw of
 * paint and slip is closed anew), f within its own, then (paint − f·slip) closed on the model's oxides. An oxide that
 * comes out at nothing or less is uniform from 0 to two of its standard uncertainties. Throws when an oxide of the
 * model was not measured in the sample, or in the slip, or is below detection without a limit.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 0, sigmaBasis: 'stated', resolution: null })
 * model = { parts: ['PbO', 'SiO2'], settings: { replacement: { fraction: 0.65, limits: {} } } }
 * sample = { label: 'T1', spots: 1, amounts: { PbO: of(45), SiO2: of(55) } }
 * slip = { analysed: { label: 'S', spots: 1, amounts: { PbO: of(0.0001), SiO2: of(99.9999) } }, fraction: { f: 0.25, sigma: 0, df: null } }
 * drawer = samplerOf(model, { sample, slip, settings: { assumedRelative: null, unmeasured: 'refuse' } }, randomStream(1))
 * parts = new Float64Array(2)
 * drawer.draw(parts, { i: 0, stride: 1 }) // 0.25
 * parts // [59.99997, 40.00003]
 */
export function samplerOf(
  model: Pick<ReferenceModel, 'parts' | 'settings'>,
  { sample, slip, settings }: UncertaintyRequest,
  random: RandomStream,
): Sampler {
  const side = (
    from: Pick<UncertaintyRequest['sample'], 'label' | 'amounts'>,
    { none, fraction }: Pick<SideOptions, 'none' | 'fraction'>,
  ) => sideOf(from, model, { none, fraction, assumedRelative: settings.assumedRelative });
  const paint = side(sample, { none: false, fraction: model.settings.replacement.fraction });
  // What is drawn off has no logarithm of its own, so a slip may hold anything from 0 to its limit.
  const under = slip && side(slip.analysed, { none: settings.unmeasured === 'none', fraction: WHOLE });
  const spent = new Float64Array(model.parts.length);
  const draw = (parts: Float64Array, { i, stride }: { i: number; stride: number }): number => {
    const f = slip ? drawFraction(slip.fraction, random) : 0;
    const scale = redraw(paint, random);
    const slipScale = under ? f * redraw(under, random) : 0;
    let sum = 0;
    for (let j = 0; j < paint.at.length; j++) {
      const k = paint.at[j]!;
      let left = scale * paint.drawn[k]!;
      if (under && under.at[j]! >= 0) left -= slipScale * under.drawn[under.at[j]!]!;
      if (!(left > 0)) {
        spent[j]! += 1;
        left = drawSpent({ paint, under, j, f }, random);
      }
      parts[j * stride + i] = left;
      sum += left;
    }
    for (let j = 0; j < paint.at.length; j++) parts[j * stride + i]! *= 100 / sum;
    return f;
  };
  return { draw, spent };
}

interface SideOptions {
  readonly none: boolean;
  /** Share of the limit about which a value below detection is drawn. */
  readonly fraction: number;
  readonly assumedRelative: number | null;
}

function sideOf(
  { label, amounts }: { label: string; amounts: Amounts },
  { parts, settings }: Pick<ReferenceModel, 'parts' | 'settings'>,
  { none, fraction, assumedRelative }: SideOptions,
): Side {
  // Of the oxides that are not compared, those below an unknown limit weigh nothing in the total.
  const oxides = Object.keys(amounts).filter(
    (oxide) => parts.includes(oxide) || amounts[oxide]!.value || amounts[oxide]!.limit !== null,
  );
  const at = parts.map((oxide) => oxides.indexOf(oxide));
  const missing = parts.find((_, j) => at[j]! < 0);
  if (missing && !none)
    throw new RequirementError(
      `drawing a comparison needs every oxide compared; ${missing} of ${label} was not measured`,
    );
  const drawables = oxides.map((oxide) => {
    const limit = settings.replacement.limits[oxide] ?? null;
    return drawable(amounts[oxide]!, { name: `${oxide} of ${label}`, assumedRelative, limit, fraction });
  });
  const total = drawables.reduce((sum, a) => sum + (a.below > 0 ? (a.least + a.below) / 2 : a.value), 0);
  return { amounts: drawables, total, at, drawn: new Float64Array(oxides.length) };
}

/** Draws one side anew; returns the factor that closes it. */
function redraw({ amounts, total, drawn }: Side, random: RandomStream): number {
  let sum = 0;
  for (let k = 0; k < amounts.length; k++) {
    drawn[k] = drawAmount(amounts[k]!, random);
    sum += drawn[k]!;
  }
  return total / sum;
}

function drawFraction({ f, sigma, df }: CarriedFraction, random: RandomStream): number {
  if (sigma === 0) return f;
  for (let tries = 0; tries < TRIES; tries++) {
    const x = f + sigma * drawStudent(Math.max(0, Math.round(df ?? 0)), random);
    if (x >= 0 && x <= MOST) return x;
  }
  throw new RequirementError(
    `a slip fraction needs to lie within 0–${MOST} for some draws; ${f} ± ${sigma} never did in ${TRIES}`,
  );
}

interface SpentDraw {
  readonly paint: Side;
  readonly under: Side | null;
  readonly j: number;
  readonly f: number;
}

function drawSpent({ paint, under, j, f }: SpentDraw, random: RandomStream): number {
  const own = spreadOf(paint.amounts[paint.at[j]!]!);
  const beneath = under && under.at[j]! >= 0 ? f * spreadOf(under.amounts[under.at[j]!]!) : 0;
  const limit = SPENT_AT * Math.hypot(own, beneath);
  if (limit > 0) return limit * (1 - random.uniform());
  throw new RequirementError(
    'drawing slip off needs every oxide to stay above nothing, or an uncertainty within which it can be spent; one came to nothing and has none',
  );
}

const spreadOf = ({ sigma, step, least, below }: DrawableAmount) =>
  Math.hypot(sigma, (step + below - least) / Math.sqrt(12));
