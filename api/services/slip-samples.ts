import { and, eq, inArray, or } from 'drizzle-orm';
import { visibleAnalysis, visibleSpecimen, visibleWareGroup } from '../../db/schema/schema.ts';
import type { ComparisonRequest, Exclusion } from '../contract/placement.ts';
import type { Measured, Sample } from '../domain/composition/types.ts';
import type { SlipShelf } from '../domain/slip/slip-source.ts';
import type { Caller } from './access.ts';
import { analysesOf, bySpecimen, sampleOf } from './samples.ts';

/** How analyses are written before they are read as slip, body or paint. */
export interface Basis {
  readonly normalisation: ComparisonRequest['normalisation'];
  /** Share of a detection limit that stands in for a value below it where spots are averaged. */
  readonly fraction: number;
}
export interface MeasuredSamples {
  readonly samples: readonly Sample[];
  readonly excluded: readonly Exclusion[];
}
export interface Wanted extends Basis {
  readonly measured: Measured;
  /** Ids of specimens and of ware groups; null reads all there are. */
  readonly specimens: readonly string[] | null;
  readonly groups?: readonly string[];
}

/** One thing measured (slip, body, paint) on some specimens, one sample each, whatever kind of specimen it is. */
export async function readMeasured(
  caller: Caller,
  studyId: string,
  { measured, specimens, groups = [], normalisation, fraction }: Wanted,
): Promise<MeasuredSamples> {
  const chosen =
    specimens === null
      ? undefined
      : or(inArray(visibleSpecimen.id, [...specimens]), inArray(visibleSpecimen.wareGroupId, [...groups]));
  const rows = await analysesOf(caller, studyId, and(eq(visibleAnalysis.measured, measured), chosen));
  const settings = { groups: [], replacement: { fraction, limits: {} } };
  const made = bySpecimen(rows).map((spots) => sampleOf(spots, { normalisation, measured, settings }));
  return {
    samples: made.flatMap(({ sample }) => (sample ? [sample] : [])),
    excluded: made.flatMap(({ excluded }) => excluded),
  };
}

/** Every slip analysed in a study, and the names of its ware groups. */
export async function readSlips(caller: Caller, studyId: string, basis: Basis): Promise<SlipShelf> {
  const { samples } = await readMeasured(caller, studyId, { ...basis, measured: 'slip', specimens: null });
  return { slips: samples, names: await groupNames(caller, studyId) };
}

export async function groupNames({ db }: Caller, studyId: string): Promise<Record<string, string>> {
  const rows = await db
    .select({ id: visibleWareGroup.id, name: visibleWareGroup.name })
    .from(visibleWareGroup)
    .where(eq(visibleWareGroup.studyId, studyId));
  return Object.fromEntries(rows.map(({ id, name }) => [id, name]));
}

export const basisOf = ({ normalisation, settings }: ComparisonRequest): Basis => ({
  normalisation,
  fraction: settings.replacement.fraction,
});
