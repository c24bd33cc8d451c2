import { randomUUID } from 'node:crypto';
import { and, asc, eq, inArray } from 'drizzle-orm';
import type { Database, Transaction } from '../../db/connect.ts';
import { firing, specimen, tile, zone } from '../../db/schema/schema.ts';
import type { KeptReading, TakenReading } from '../contract/firing.ts';
import type { Sheet } from '../contract/sheet.ts';
import { airNow, litAt } from '../domain/firing/fire-marks.ts';
import type { FireLog, FireMark } from '../domain/firing/fire-note-types.ts';
import { readingBounds } from '../domain/firing/hand-reading.ts';
import type { AirStage } from '../domain/firing/types.ts';
import { attempt, found } from './failure.ts';

/** Which firing a sheet is of; whoever calls has asked for the right to it. */
export interface SheetPlace {
  readonly studyId: string;
  readonly firingId: string;
}
type Reader = Database | Transaction;

const LAST_READINGS = 12;

export async function readSheet(db: Reader, place: SheetPlace): Promise<Sheet> {
  const row = found((await db.select().from(firing).where(ofPlace(place)))[0], 'the firing');
  const { stages, readings, marks } = logOf(row);
  return {
    firing: { id: row.id, name: row.name, date: row.date, place: row.place, fuel: row.fuel },
    lit: litAt(marks),
    logged: row.digest !== null,
    air: airNow(marks),
    stages: [...stages],
    readings: readings.slice(-LAST_READINGS).map(({ at, clock, where, reading }) => {
      const bounds = attempt(() => readingBounds(reading));
      return {
        ...{ at, clock, where, kind: reading.kind, celsius: reading.celsius },
        bounds: 'value' in bounds ? bounds.value : null,
      };
    }),
    tiles: await tilesOf(db, row.id),
    arrived: marks.map((one) => one.mark),
    answeredAt: new Date().toISOString(),
  };
}

export const ofPlace = ({ studyId, firingId }: SheetPlace) =>
  and(eq(firing.studyId, studyId), eq(firing.id, firingId));

type Row = Pick<typeof firing.$inferSelect, 'stages' | 'readings'>;
type Kept = KeptReading | FireMark;
const isMark = (one: unknown): one is FireMark => typeof one === 'object' && one !== null && 'mark' in one;

/** A reading that came by no note gets its id here. */
export const withId = (reading: TakenReading): KeptReading => ({ ...reading, id: randomUUID() });

/** Readings and the marks of what was noted share one column, since both grow as notes arrive. */
export function logOf(row: Row): FireLog {
  const kept = row.readings as readonly Kept[];
  return {
    stages: row.stages as readonly AirStage[],
    readings: (kept.filter((one) => !isMark(one)) as KeptReading[]).map((one) => ({
      ...one,
      clock: one.clock ?? null,
    })),
    marks: kept.filter(isMark),
  };
}

async function tilesOf(db: Reader, firingId: string): Promise<Sheet['tiles']> {
  const rows = await db
    .select({
      ...{ id: tile.specimenId, label: specimen.label, settings: tile.settings },
      ...{ place: tile.place, position: tile.position },
    })
    .from(tile)
    .innerJoin(specimen, eq(specimen.id, tile.specimenId))
    .where(eq(tile.firingId, firingId))
    .orderBy(specimen.labelOrder, tile.specimenId);
  if (rows.length === 0) return [];
  const zones = await db
    .select({
      ...{ id: zone.id, tile: zone.tileId, label: zone.label, coats: zone.coats },
      ...{ micrometres: zone.micrometres, settings: zone.settings, grade: zone.grade },
    })
    .from(zone)
    .where(
      inArray(
        zone.tileId,
        rows.map((one) => one.id),
      ),
    )
    .orderBy(asc(zone.row), asc(zone.column), asc(zone.label));
  return rows.map((one) => ({
    ...one,
    zones: zones.filter((each) => each.tile === one.id).map(({ tile: _, ...each }) => each),
  }));
}
