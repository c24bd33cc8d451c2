import { and, asc, eq, inArray, or, type SQL } from 'drizzle-orm';
import { technique, visibleAnalysis, visibleSpecimen } from '../../db/schema/schema.ts';
import type { ComparisonRequest, Exclusion, Remark } from '../contract/placement.ts';
import { normaliseAnalysis } from '../domain/composition/normalise.ts';
import { averageSpots } from '../domain/composition/spots.ts';
import type { NormalisedAnalysis, ReportedValue, Sample } from '../domain/composition/types.ts';
import type { Caller } from './access.ts';
import { attempt } from './failure.ts';

/** Samples ready to be compared, and what could not become one. */
export interface Samples {
  readonly references: readonly Sample[];
  /** What is to be placed; a sherd of a chosen group is in `references` too. */
  readonly targets: readonly Sample[];
  readonly excluded: readonly Exclusion[];
  readonly remarks: readonly Remark[];
}

/** As-reported analyses → normalised → spots averaged → samples, for everything a comparison asks for. */
export async function readSamples(
  caller: Caller,
  studyId: string,
  request: ComparisonRequest,
): Promise<Samples> {
  const rows = await analysesOf(
    caller,
    studyId,
    and(eq(visibleAnalysis.measured, request.measured), or(isReference(request), isWanted(request))),
  );
  const byHand = new Map(request.leaveOut.map(({ specimen, reason }) => [specimen, reason]));
  const [references, targets]: [Sample[], Sample[]] = [[], []];
  const [excluded, remarks]: [Exclusion[], Remark[]] = [[], []];
  for (const spots of bySpecimen(rows)) {
    const { specimen, label, group } = spots[0]!;
    const reason = byHand.get(specimen);
    if (reason !== undefined) {
      excluded.push({ specimen, label, group, analysis: null, reason: `left out by hand: ${reason}` });
      continue;
    }
    const made = sampleOf(spots, request);
    excluded.push(...made.excluded);
    remarks.push(...made.remarks);
    if (made.sample === null) continue;
    if (made.sample.role === 'reference') references.push(made.sample);
    if (isTarget(spots[0]!, request)) targets.push(made.sample);
  }
  return { references, targets, excluded, remarks };
}

type Row = Awaited<ReturnType<typeof analysesOf>>[number];
/** What of a request turns analyses into samples. */
type SampleRequest = Pick<ComparisonRequest, 'normalisation' | 'measured'> & {
  readonly settings: Pick<ComparisonRequest['settings'], 'groups' | 'replacement'>;
};

/** Analyses of a study in the order they are read in, with what is needed to make samples of them. */
export function analysesOf({ db }: Caller, studyId: string, which: SQL | undefined) {
  return db
    .select({
      specimen: visibleSpecimen.id,
      label: visibleSpecimen.label,
      kind: visibleSpecimen.kind,
      group: visibleSpecimen.wareGroupId,
      analysis: visibleAnalysis.id,
      spot: visibleAnalysis.spot,
      reported: visibleAnalysis.reported,
      relativeError: technique.relativeError,
    })
    .from(visibleAnalysis)
    .innerJoin(visibleSpecimen, eq(visibleSpecimen.id, visibleAnalysis.specimenId))
    .leftJoin(technique, eq(technique.code, visibleAnalysis.technique))
    .where(and(eq(visibleAnalysis.studyId, studyId), which))
    .orderBy(asc(visibleSpecimen.labelOrder), visibleSpecimen.id, visibleAnalysis.row, visibleAnalysis.id);
}

function isReference({ settings }: ComparisonRequest): SQL | undefined {
  return and(eq(visibleSpecimen.kind, 'sherd'), inArray(visibleSpecimen.wareGroupId, [...settings.groups]));
}

function isWanted({ replicas }: ComparisonRequest): SQL | undefined {
  if (replicas === null) return eq(visibleSpecimen.kind, 'replica');
  return replicas.length === 0 ? undefined : inArray(visibleSpecimen.id, replicas);
}

const isTarget = (row: Row, { replicas }: ComparisonRequest) =>
  replicas === null ? row.kind === 'replica' : replicas.includes(row.specimen);

/** The rows of each specimen. */
export function bySpecimen(rows: readonly Row[]): Row[][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const spots = groups.get(row.specimen);
    if (spots) spots.push(row);
    else groups.set(row.specimen, [row]);
  }
  return [...groups.values()];
}

/** One sample of all spots of a specimen, and what could not enter it. */
export function sampleOf(spots: readonly Row[], request: SampleRequest) {
  const { specimen, label, group, kind } = spots[0]!;
  const excluded: Exclusion[] = [];
  const remarks: Remark[] = [];
  const exclude = (analysis: string | null, reason: string) =>
    excluded.push({ specimen, label, group, analysis, reason });
  const normalised: NormalisedAnalysis[] = [];
  for (const spot of spots) {
    const result = attempt(() => normalise(spot, request));
    if ('reason' in result) exclude(spot.analysis, result.reason);
    else normalised.push(result.value);
  }
  for (const message of new Set(normalised.flatMap((one) => one.warnings)))
    remarks.push({ specimen, label, message });
  if (normalised.length === 0) return { sample: null, excluded, remarks };
  const { fraction } = request.settings.replacement;
  const mean = attempt(() => averageSpots(normalised, { fraction }));
  if ('reason' in mean) {
    exclude(null, mean.reason);
    return { sample: null, excluded, remarks };
  }
  const { warnings, ...averaged } = mean.value;
  remarks.push(...warnings.map((message) => ({ specimen, label, message })));
  const isMember = kind === 'sherd' && group !== null && request.settings.groups.includes(group);
  const role = isMember ? 'reference' : 'replica';
  const sample: Sample = { id: specimen, label, group, role, measured: request.measured, ...averaged };
  return { sample, excluded, remarks };
}

function normalise({ reported, relativeError }: Row, { normalisation }: SampleRequest): NormalisedAnalysis {
  return normaliseAnalysis(reported as readonly ReportedValue[], normalisation, { relativeError });
}
