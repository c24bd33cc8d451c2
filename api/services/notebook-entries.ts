import { eq } from 'drizzle-orm';
import {
  batch,
  dataImport,
  firing,
  placement,
  plan,
  roast,
  visibleAnalysis,
  visibleSpecimen,
  zone,
} from '../../db/schema/schema.ts';
import type { Entry } from '../contract/notebook.ts';
import type { Picture } from '../contract/picture.ts';
import type { Caller } from './access.ts';
import type { FoundEntry } from './notebook-fold.ts';
import { listPictures } from './pictures.ts';
import { listTiles } from './tiles.ts';

interface Source {
  readonly id: string;
  readonly title: string;
  readonly text: readonly (string | null | undefined)[];
  /** Null where nobody noted the day. */
  readonly date: string | null;
  readonly createdAt: Date | string;
  readonly specimen?: string;
  readonly pictures?: readonly Picture[];
  readonly file?: FoundEntry['file'];
}

export async function fireEntries(caller: Caller, studyId: string): Promise<FoundEntry[]> {
  const { db } = caller;
  const firings = await db.select().from(firing).where(eq(firing.studyId, studyId));
  const plans = await db.select().from(plan).where(eq(plan.studyId, studyId));
  const tiles = await listTiles(caller, studyId);
  const pictures = (await listPictures(caller, studyId, {})).filter((one) => one.firing !== null);
  const dateOf = (id: string | null) => firings.find((one) => one.id === id)?.date ?? null;
  return [
    ...firings.map((row) =>
      entryOf('firing', {
        ...{ ...row, title: row.name },
        pictures: pictures.filter((one) => one.firing === row.id),
        text: [row.place, row.fuel && `Fuel: ${row.fuel}`, row.weather, row.note],
      }),
    ),
    ...plans.map((row) =>
      entryOf('plan', { ...row, title: row.name, date: null, text: [row.reason, row.note] }),
    ),
    ...tiles.map((row) =>
      entryOf('tile', {
        ...{ ...row, title: row.label, date: dateOf(row.firing), specimen: row.id },
        pictures: row.pictures,
        text: [row.batchName && `Painted with ${row.batchName}`, gradesInWords(row.zones), row.notes],
      }),
    ),
  ];
}

export async function benchEntries({ db }: Caller, studyId: string): Promise<FoundEntry[]> {
  const batches = await db.select().from(batch).where(eq(batch.studyId, studyId));
  const roasts = await db.select().from(roast).where(eq(roast.studyId, studyId));
  return [
    ...batches.map((row) => entryOf('batch', { ...row, title: row.name, date: null, text: [row.note] })),
    ...roasts.map((row) => entryOf('roast', { ...row, title: row.name, text: [row.note] })),
  ];
}

export async function readingEntries({ db }: Caller, studyId: string): Promise<FoundEntry[]> {
  const analyses = await db
    .select({
      id: visibleAnalysis.id,
      measured: visibleAnalysis.measured,
      specimenId: visibleAnalysis.specimenId,
      spot: visibleAnalysis.spot,
      technique: visibleAnalysis.technique,
      laboratory: visibleAnalysis.laboratory,
      note: visibleAnalysis.note,
      date: visibleAnalysis.date,
      createdAt: visibleAnalysis.createdAt,
      label: visibleSpecimen.label,
      zone: zone.label,
      importId: visibleAnalysis.importId,
      fileName: dataImport.fileName,
    })
    .from(visibleAnalysis)
    .innerJoin(visibleSpecimen, eq(visibleSpecimen.id, visibleAnalysis.specimenId))
    .leftJoin(zone, eq(zone.id, visibleAnalysis.zoneId))
    .leftJoin(dataImport, eq(dataImport.id, visibleAnalysis.importId))
    .where(eq(visibleAnalysis.studyId, studyId));
  const placements = await db.select().from(placement).where(eq(placement.studyId, studyId));
  return [
    ...analyses.map(({ label, importId, fileName, ...one }) =>
      entryOf('analysis', {
        ...{ ...one, title: `${label}, ${one.measured}`, specimen: one.specimenId },
        file: importId === null ? null : { id: importId, name: fileName ?? '' },
        text: [
          one.zone && `Zone ${one.zone}`,
          one.spot && `Spot ${one.spot}`,
          one.technique,
          one.laboratory,
          one.note,
        ],
      }),
    ),
    ...placements.map((row) =>
      entryOf('placement', { ...row, title: row.name, date: null, text: [...row.sentences, row.note] }),
    ),
  ];
}

function entryOf(kind: Entry['kind'], source: Source): FoundEntry {
  const writtenAt = new Date(source.createdAt).toISOString();
  return {
    kind,
    id: source.id,
    date: source.date ?? writtenAt.slice(0, 10),
    dated: source.date !== null,
    writtenAt,
    title: source.title,
    text: source.text.filter(Boolean).join('. ').replaceAll('..', '.'),
    specimen: source.specimen ?? null,
    count: 1,
    file: source.file ?? null,
    pictures: (source.pictures ?? []).map(({ id, type, caption, taken }) => ({
      ...{ id, type },
      alt: [caption || `Picture of ${source.title}`, taken].filter(Boolean).join(', '),
    })),
  };
}

function gradesInWords(zones: readonly { grade: string | null }[]): string {
  const grades = ['matt', 'satin', 'glossy'].flatMap((grade) => {
    const n = zones.filter((zone) => zone.grade === grade).length;
    return n > 0 ? [`${n} ${grade}`] : [];
  });
  return `${zones.length} zones${grades.length > 0 ? `: ${grades.join(', ')}` : ', outcome open'}`;
}
