import type { Sample } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { isBelow, limitFor } from './compose.ts';
import type { FallenOut, LeftOut, ModelSettings } from './types.ts';

/** The oxides compared, and who and what stays out, with the reasons. */
export interface ChosenParts {
  readonly parts: readonly string[];
  readonly fallenOut: readonly FallenOut[];
  readonly leftOut: readonly LeftOut[];
  readonly warnings: readonly string[];
}

/** What the choice is made from. */
export interface PartsRequest {
  readonly references: readonly Sample[];
  readonly replicas: readonly Sample[];
  readonly settings: Pick<ModelSettings, 'parts' | 'replacement'>;
}

/** Relative difference below which two amounts are the same number, seen through closure. */
const SAME = 1e-12;

const unique = (names: readonly string[]) => [...new Set(names)];
const everyone = (request: PartsRequest) => [...request.references, ...request.replicas];
const oxidesOf = (request: PartsRequest) =>
  unique(everyone(request).flatMap((sample) => Object.keys(sample.amounts)));
const labels = (samples: readonly Sample[]) => samples.map((sample) => sample.label);

const lacks = (sample: Sample, oxide: string) => sample.amounts[oxide] === undefined;
const below = (sample: Sample, oxide: string) => !lacks(sample, oxide) && isBelow(sample.amounts[oxide]!);
function lacksLimit(sample: Sample, oxide: string, request: PartsRequest): boolean {
  if (!below(sample, oxide)) return false;
  const limit = limitFor(oxide, sample.amounts[oxide]!, request.settings.replacement.limits);
  return limit === null || !(limit > 0);
}

/** An oxide that carries nothing: never detected in a reference, or the same number in all of them. */
function isConstant(references: readonly Sample[], oxide: string): boolean {
  if (references.every((sample) => below(sample, oxide))) return true;
  if (references.some((sample) => below(sample, oxide))) return false;
  const values = references.map((sample) => sample.amounts[oxide]!.value!);
  const high = values.reduce((a, b) => Math.max(a, b), 0);
  return values.length > 1 && values.every((value) => high - value <= SAME * high);
}

function reasonAgainst(oxide: string, request: PartsRequest): FallenOut | null {
  const missing = everyone(request).filter((sample) => lacks(sample, oxide));
  if (missing.length > 0) return { oxide, because: 'not measured', specimens: labels(missing) };
  if (isConstant(request.references, oxide)) return { oxide, because: 'constant', specimens: [] };
  const unlimited = everyone(request).filter((sample) => lacksLimit(sample, oxide, request));
  if (unlimited.length > 0) return { oxide, because: 'no detection limit', specimens: labels(unlimited) };
  return null;
}

function common(request: PartsRequest): Omit<ChosenParts, 'warnings'> {
  const oxides = oxidesOf(request);
  const fallenOut = oxides.flatMap((oxide) => reasonAgainst(oxide, request) ?? []);
  const out = new Set(fallenOut.map((f) => f.oxide));
  return { parts: oxides.filter((oxide) => !out.has(oxide)), fallenOut, leftOut: [] };
}

function whyLeftOut(sample: Sample, wanted: readonly string[], request: PartsRequest): LeftOut[] {
  const missing = wanted.filter((oxide) => lacks(sample, oxide));
  const unlimited = wanted.filter((oxide) => lacksLimit(sample, oxide, request));
  const reasons = [
    ...(missing.length > 0 ? [`${missing.join(', ')} not measured`] : []),
    ...(unlimited.length > 0 ? [`${unlimited.join(', ')} below detection without a limit`] : []),
  ];
  return reasons.length > 0 ? [{ sample: sample.id, label: sample.label, reason: reasons.join('; ') }] : [];
}

function byHand(request: PartsRequest, chosen: readonly string[]): Omit<ChosenParts, 'warnings'> {
  const wanted = unique(chosen);
  const nowhere = wanted.filter((oxide) => request.references.every((sample) => lacks(sample, oxide)));
  if (nowhere.length > 0)
    throw new RequirementError(
      `a chosen oxide needs a reference that has it; none has ${nowhere.join(', ')}`,
    );
  const leftOut = everyone(request).flatMap((sample) => whyLeftOut(sample, wanted, request));
  const gone = new Set(leftOut.map((left) => left.sample));
  const references = request.references.filter((sample) => !gone.has(sample.id));
  const constant = wanted.filter((oxide) => isConstant(references, oxide));
  const fallenOut: FallenOut[] = [
    ...constant.map((oxide) => ({ oxide, because: 'constant' as const, specimens: [] })),
    ...oxidesOf(request)
      .filter((oxide) => !wanted.includes(oxide))
      .map((oxide) => ({ oxide, because: 'not chosen' as const, specimens: [] })),
  ];
  return { parts: wanted.filter((oxide) => !constant.includes(oxide)), fallenOut, leftOut };
}

/** An oxide found in a replica but never in a reference is the one thing a distance cannot show. */
function foundInReplicasOnly(request: PartsRequest, fallenOut: readonly FallenOut[]): string[] {
  const silent = fallenOut.filter(
    ({ oxide, because }) =>
      because !== 'not chosen' && request.references.every((s) => lacks(s, oxide) || below(s, oxide)),
  );
  return silent.flatMap(({ oxide }) => {
    const found = request.replicas.filter((sample) => (sample.amounts[oxide]?.value ?? 0) > 0);
    if (found.length === 0) return [];
    const where = found.map((s) => `${s.label} (${Number(s.amounts[oxide]!.value!.toPrecision(2))} wt%)`);
    return [`${oxide} was found in ${where.join(', ')} but in no reference, so it is not compared.`];
  });
}

/**
 * Which oxides a comparison can use. Without a choice by hand: those measured in every reference and replica, with a
 * limit wherever one is below detection; each oxide that falls out names the specimens that are the reason. With a
 * choice by hand: exactly those, and the samples that lack one are left out instead. An oxide that is the same
 * in every reference, or detected in none, always falls out. Throws when fewer than two oxides remain.
 *
 * @example
 * const amount = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null });
 * const one = { id: '1', label: 'R1', amounts: { PbO: amount(50), SiO2: amount(40), CuO: amount(10) } };
 * const two = { id: '2', label: 'R2', amounts: { PbO: amount(60), SiO2: amount(40.1) } };
 * const settings = { parts: null, replacement: { fraction: 0.65, limits: {} } };
 * chooseParts({ references: [one, two], replicas: [], settings }).fallenOut // [{ oxide: 'CuO', because: 'not measured', specimens: ['R2'] }]
 * chooseParts({ references: [two], replicas: [one], settings: { ...settings, parts: ['PbO', 'CuO'] } }) // throws none has CuO
 */
export function chooseParts(request: PartsRequest): ChosenParts {
  const { parts } = request.settings;
  const chosen = parts ? byHand(request, parts) : common(request);
  if (chosen.parts.length < 2) throw new RequirementError(tooFew(chosen));
  return { ...chosen, warnings: foundInReplicasOnly(request, chosen.fallenOut) };
}

const FEW = 3;
function tooFew({ parts, fallenOut }: Omit<ChosenParts, 'warnings'>): string {
  const out = fallenOut.map(({ oxide, because, specimens }) => {
    const names = specimens.slice(0, FEW).join(', ') + (specimens.length > FEW ? ' …' : '');
    return `${oxide} (${because}${names && ` in ${names}`})`;
  });
  return `a comparison needs at least two oxides measured in every specimen; ${parts.join(', ') || 'none'} is left, and these fall out: ${out.join('; ')}`;
}
