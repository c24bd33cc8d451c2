import type { EstimateAnswer, EstimateRequest } from '../contract/slip-estimate.ts';
import type {
  DepthAnswer,
  DepthRequest,
  RecastAnswer,
  RecastRequest,
  UptakeAnswer,
  UptakeRequest,
} from '../contract/slip-layer.ts';
import { fractionFromBatch } from '../domain/slip/batch-fraction.ts';
import { electronDepth } from '../domain/slip/electron-depth.ts';
import { fractionsFromGroup } from '../domain/slip/group-fraction.ts';
import { overlapWarnings } from '../domain/slip/overlaps.ts';
import { readingDepths } from '../domain/slip/reading-depth.ts';
import { ADDED_OXIDES, recast } from '../domain/slip/recast.ts';
import { slipFor } from '../domain/slip/slip-source.ts';
import { correctByLine, substrateReadings } from '../domain/slip/substrate.ts';
import { fractionFromTracers } from '../domain/slip/tracers.ts';
import type { Analysed } from '../domain/slip/types.ts';
import { fitUptake } from '../domain/slip/uptake.ts';
import { fractionFromThickness } from '../domain/slip/uptake-apply.ts';
import { type Caller, requireStudy } from './access.ts';
import { attempt } from './failure.ts';
import { oneMeasured, readAnalysed } from './slip-analysed.ts';
import { type Basis, readMeasured, readSlips } from './slip-samples.ts';

/** How much of a reading is slip, by tracers, by the batch or by a ware group's own line. */
export async function estimateSlip(
  caller: Caller,
  studyId: string,
  wish: EstimateRequest,
): Promise<EstimateAnswer> {
  await requireStudy(caller, studyId);
  if (wish.by === 'group') return byGroup(caller, studyId, wish);
  const { paint, slip } = await paintAndSlip(caller, studyId, wish);
  const named = { paint: paint.label, slip: slip.label, line: null };
  if (wish.by === 'tracers')
    return answer({ ...named, estimate: fractionFromTracers(paint, slip, wish.tracers) });
  const target = await readAnalysed(caller, studyId, { ref: wish.target, basis: wish });
  const some = wish.oxides === null ? {} : { oxides: wish.oxides };
  return answer({ ...named, estimate: fractionFromBatch(paint, target, { slip, ...some }) });
}

const answer = (found: unknown) => found as EstimateAnswer;

type ByGroup = Extract<EstimateRequest, { by: 'group' }>;

async function byGroup(caller: Caller, studyId: string, wish: ByGroup): Promise<EstimateAnswer> {
  const of = (measured: 'paint' | 'slip') =>
    readMeasured(caller, studyId, { ...wish, measured, specimens: [], groups: [wish.group] });
  const [paints, slips] = await Promise.all([of('paint'), of('slip')]);
  const line = fractionsFromGroup({
    paints: paints.samples,
    slips: slips.samples,
    known: wish.known,
    ...(wish.oxides === null ? {} : { oxides: wish.oxides }),
  });
  if (wish.specimen === null) return answer({ estimate: null, paint: null, slip: null, line });
  const { paint, slip } = await paintAndSlip(caller, studyId, { ...wish, specimen: wish.specimen });
  const target = { label: 'the group’s own paint', spots: 1, amounts: line.paintEnd };
  const oxides = line.oxides.filter((oxide) => paint.amounts[oxide] && slip.amounts[oxide]);
  const estimate = fractionFromBatch(paint, target, { slip, oxides, target: 'group' });
  return answer({ estimate, paint: paint.label, slip: slip.label, line });
}

type Pair = Basis & { readonly specimen: string } & Pick<ByGroup, 'source'>;

async function paintAndSlip(
  caller: Caller,
  studyId: string,
  { specimen, source, ...basis }: Pair,
): Promise<{ paint: Analysed; slip: Analysed }> {
  const paint = await oneMeasured(caller, studyId, { ...basis, specimen, measured: 'paint' });
  return { paint, slip: slipFor(source, paint, await readSlips(caller, studyId, basis)) };
}

/** Takes lead and what was added with it out of a paint and sets the rest beside clays. */
export async function recastPaint(
  caller: Caller,
  studyId: string,
  wish: RecastRequest,
): Promise<RecastAnswer> {
  await requireStudy(caller, studyId);
  const paint = await readAnalysed(caller, studyId, { ref: wish.paint, basis: wish });
  const clays = [];
  for (const ref of wish.clays) {
    const clay = await readAnalysed(caller, studyId, { ref, basis: wish });
    const made = attempt(() => recast(paint, clay, wish.added ?? ADDED_OXIDES));
    const nothing = { removed: [], leftOut: [], rows: [], verdict: null };
    clays.push(
      'value' in made
        ? { clay: clay.label, refusal: null, ...made.value }
        : { clay: clay.label, refusal: made.reason, ...nothing },
    );
  }
  return { paint: paint.label, usual: [...ADDED_OXIDES], clays } as unknown as RecastAnswer;
}

const wtOf = ({ amounts }: Analysed) =>
  Object.fromEntries(Object.entries(amounts).map(([oxide, { value }]) => [oxide, value ?? 0]));

/** How deep a paint is read, and how much of each oxide's reading comes from the slip beneath. */
export async function readDepth(caller: Caller, studyId: string, wish: DepthRequest): Promise<DepthAnswer> {
  await requireStudy(caller, studyId);
  const paint = await readAnalysed(caller, studyId, { ref: wish.paint, basis: wish });
  const slip = wish.slip && (await readAnalysed(caller, studyId, { ref: wish.slip, basis: wish }));
  const { thickness, density, incoming, inAngle, outAngle } = wish;
  const geometry = { incoming, inAngle, outAngle };
  const oxides = wtOf(paint);
  const stack = slip && { paint: oxides, slip: wtOf(slip), thickness, density };
  const correction = stack && attempt(() => correctByLine(stack, geometry));
  const found = {
    paint: paint.label,
    slip: slip?.label ?? null,
    depths: readingDepths({ oxides, density }, geometry),
    readings: stack && substrateReadings(stack, geometry),
    corrected: correction && 'value' in correction ? correction.value : null,
    correctionRefusal: correction && 'reason' in correction ? correction.reason : null,
    electrons: wish.electrons === null ? null : electronDepth({ oxides, density, beam: wish.electrons }),
    warnings: overlapWarnings(Object.keys(oxides).filter((oxide) => oxides[oxide]! > 0)),
  };
  return found as DepthAnswer;
}

/** Learns from tiles how slip falls with thickness, and applies it to paints of known thickness. */
export async function learnUptake(
  caller: Caller,
  studyId: string,
  wish: UptakeRequest,
): Promise<UptakeAnswer> {
  await requireStudy(caller, studyId);
  const uptake = fitUptake(wish.tiles, wish.law);
  const applied = wish.apply.map(({ specimen, label, thickness, sigma }) => ({
    specimen,
    label,
    estimate: fractionFromThickness(uptake, { thickness, sigma }),
  }));
  return { uptake, applied } as unknown as UptakeAnswer;
}
