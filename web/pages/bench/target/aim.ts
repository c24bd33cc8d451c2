import type { Analysis } from '../../../../api/contract/analysis.ts';
import { type TargetSpread, targetSpreadOf } from '../../../../api/domain/batch/target-spread.ts';
import { normaliseAnalysis } from '../../../../api/domain/composition/normalise.ts';
import { averageSpots } from '../../../../api/domain/composition/spots.ts';
import {
  type Amounts,
  DEFAULT_NORMALISATION,
  type Sample,
} from '../../../../api/domain/composition/types.ts';
import { fitReference } from '../../../../api/domain/reference/fit.ts';
import { DEFAULT_MODEL, type ReferenceModel } from '../../../../api/domain/reference/types.ts';
import { drawOff } from '../../../../api/domain/slip/mixing.ts';
import { attempt } from '../parts/attempt.ts';
import type { Aimed } from './target-form.ts';

/** The slip that is drawn off: its amounts closed to 100, and its share of the reading. */
export interface SlipTaken {
  readonly name: string;
  readonly amounts: Amounts;
  readonly share: number;
}

const FRACTION = DEFAULT_MODEL.replacement.fraction;
const NOT_IN_SLIP = 'What was not measured in the slip is taken as absent from it.';

const known = (value: number): Amounts[string] => ({
  value,
  ...{ limit: null, sigma: null, sigmaBasis: null, resolution: null },
});

/** The centre of a slip's model as amounts. */
export function slipOfModel({ parts, groups }: ReferenceModel): Amounts {
  const centre = groups[0]?.centre ?? [];
  return Object.fromEntries(parts.map((oxide, j) => [oxide, known(centre[j] ?? 0)]));
}

function withoutSlip(amounts: Amounts, slip: SlipTaken | null): Amounts {
  if (!slip) return amounts;
  return drawOff(amounts, slip.amounts, slip.share, { unmeasured: 'none' }).amounts;
}

/** Slip drawn off, and oxides not aimed at. */
export interface Choices {
  readonly slip: SlipTaken | null;
  readonly leftOut: readonly string[];
}

export interface GroupAim {
  readonly aimed: Aimed;
  /** Null where the group's spread cannot be told, with the reason in the remarks. */
  readonly spread: TargetSpread | null;
}

/** A ware group's centre and spread, its slip drawn off sherd by sherd. Throws what the model requires. */
export function aimAtGroup(
  samples: readonly Sample[],
  group: { readonly id: string; readonly name: string },
  { slip, leftOut }: Choices,
): GroupAim {
  const refused: string[] = [];
  const drawn = samples.flatMap((sample): Sample[] => {
    const made = attempt(() => withoutSlip(sample.amounts, slip));
    if (made.value === null) refused.push(`${sample.label}: ${made.reason}`);
    return made.value ? [{ ...sample, amounts: made.value, role: 'reference', group: group.id }] : [];
  });
  const modelOf = (parts: readonly string[] | null) =>
    fitReference(drawn, { ...DEFAULT_MODEL, parts, groups: [group.id] }, { [group.id]: group.name });
  const all = modelOf(null);
  const wanted = all.parts.filter((oxide) => !leftOut.includes(oxide));
  const model = wanted.length === all.parts.length ? all : modelOf(wanted);
  const found = model.groups[0]!;
  const spread = attempt(() => targetSpreadOf(model, found));
  const parts = Object.fromEntries(model.parts.map((oxide, j) => [oxide, found.centre[j] ?? 0]));
  const remarks = [
    `Centre of ${found.n} sherds; ± is their spread (standard deviation of wt%).`,
    ...(slip ? [`${showShare(slip.share)} slip (${slip.name}) drawn off each sherd. ${NOT_IN_SLIP}`] : []),
    ...refused.map((words) => `Left out: ${words}`),
    ...all.fallenOut
      .filter((one) => one.because !== 'not chosen')
      .map(({ oxide, because, specimens }) => `${oxide} is left out: ${because}${whereIn(specimens)}.`),
    ...(spread.reason ? [spread.reason] : []),
  ];
  const aimed = {
    name: `the centre of ${group.name}`,
    parts,
    sigma: deviations(model),
    remarks,
    offered: all.parts,
  };
  return { aimed, spread: spread.value };
}

const FEW = 3;
function whereIn(specimens: readonly string[]): string {
  if (specimens.length === 0) return '';
  const rest = specimens.length - FEW;
  return ` in ${specimens.slice(0, FEW).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}

/** Standard deviation of each part over the members, wt%. */
function deviations({ parts, members }: ReferenceModel): Record<string, number> {
  if (members.length < 2) return {};
  return Object.fromEntries(
    parts.map((oxide, j) => {
      const values = members.map((member) => member.parts[j] ?? 0);
      const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
      const squares = values.reduce((sum, x) => sum + (x - mean) ** 2, 0);
      return [oxide, Math.sqrt(squares / (values.length - 1))];
    }),
  );
}

/** What was measured on one specimen, its spots averaged, closed to 100. */
export function amountsOf(
  analyses: readonly Analysis[],
  relativeErrors: Readonly<Record<string, number | null>>,
): Amounts {
  const spots = analyses.map(({ reported, technique }) =>
    normaliseAnalysis(reported, DEFAULT_NORMALISATION, {
      relativeError: technique === null ? null : (relativeErrors[technique] ?? null),
    }),
  );
  return averageSpots(spots).amounts;
}

/** One sherd as a target. */
export function aimAtSherd(label: string, amounts: Amounts, { slip, leftOut }: Choices): Aimed {
  return {
    ...aimed(label, partsOf(withoutSlip(amounts, slip)), leftOut),
    remarks: slip ? [`${showShare(slip.share)} slip (${slip.name}) drawn off. ${NOT_IN_SLIP}`] : [],
  };
}

/** What was typed as a target. */
export function aimAtTyped({ values, sigma }: Figures, choices: Choices): Aimed {
  if (!choices.slip)
    return { ...aimed('a typed target', { parts: values, sigma }, choices.leftOut), remarks: [] };
  const amounts = Object.fromEntries(
    Object.entries(values).map(([oxide, wt]) => [oxide, { ...known(wt), sigma: sigma[oxide] ?? null }]),
  );
  return aimAtSherd('a typed target', amounts, choices);
}

interface Figures {
  readonly values: Readonly<Record<string, number>>;
  readonly sigma: Readonly<Record<string, number>>;
}

function aimed(name: string, { parts, sigma }: Pick<Aimed, 'parts' | 'sigma'>, leftOut: readonly string[]) {
  const kept = Object.entries(parts).filter(([oxide]) => !leftOut.includes(oxide));
  return { name, parts: Object.fromEntries(kept), sigma, offered: Object.keys(parts) };
}

function partsOf(amounts: Amounts): Pick<Aimed, 'parts' | 'sigma'> {
  const entries = Object.entries(amounts).filter(([, one]) => one.value !== null || one.limit !== null);
  return {
    parts: Object.fromEntries(
      entries.map(([oxide, { value, limit }]) => [oxide, Math.max(0, value ?? FRACTION * (limit ?? 0))]),
    ),
    sigma: Object.fromEntries(
      entries.flatMap(([oxide, { value, limit, sigma }]) => {
        const spread = value === null ? (limit ?? 0) / Math.sqrt(12) : sigma;
        return spread ? [[oxide, spread]] : [];
      }),
    ),
  };
}

const showShare = (share: number) => `${Number((100 * share).toPrecision(3))} %`;
