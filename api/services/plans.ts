import { and, desc, eq } from 'drizzle-orm';
import { plan } from '../../db/schema/schema.ts';
import type { NewPlan, PlanRecord, TilesOfPlan } from '../contract/plan.ts';
import type { NewTile, Settings, Tile } from '../contract/tile.ts';
import { planFromProposal } from '../domain/trials/next-tile-plan.ts';
import { planTrial } from '../domain/trials/plan.ts';
import type { NextTile, Plan, PlannedTile, PlanRequest } from '../domain/trials/types.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { firingRow } from './firings.ts';
import { insertTile, readTile } from './tiles.ts';
import { COATS, THICKNESS } from './trial-zones.ts';
import { blankZone } from './zone-grid.ts';

export async function listPlans(caller: Caller, studyId: string): Promise<PlanRecord[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select()
    .from(plan)
    .where(eq(plan.studyId, studyId))
    .orderBy(desc(plan.createdAt), plan.id);
  return rows.map(answer);
}

export async function readPlan(caller: Caller, studyId: string, id: string): Promise<PlanRecord> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db.select().from(plan).where(one(studyId, id));
  return answer(found(row, 'the plan'));
}

/** Drawn up with its seed, so that the same wish gives the same places on the tile and in the fire. */
export async function createPlan(caller: Caller, studyId: string, wish: NewPlan): Promise<PlanRecord> {
  await requireStudy(caller, studyId);
  const { made, reason } = drawnUp(wish);
  const [row] = await caller.db
    .insert(plan)
    .values({ studyId, name: wish.name, note: wish.note, reason, plan: made })
    .returning({ id: plan.id });
  return readPlan(caller, studyId, row!.id);
}

function drawnUp({ request, accepted }: NewPlan): { made: Plan; reason: string } {
  if ((request === undefined) === (accepted === undefined))
    throw new Failure('invalid', 'a plan needs either a request or an accepted tile.');
  if (request) return { made: planTrial(request as PlanRequest), reason: '' };
  const { tile, seed } = accepted!;
  return { made: planFromProposal(tile as NextTile, { seed }), reason: tile.reason };
}

export async function deletePlan(caller: Caller, studyId: string, id: string): Promise<void> {
  await readPlan(caller, studyId, id);
  await caller.db.delete(plan).where(one(studyId, id));
}

/** Makes a replica with zones of each planned tile; its settings become what was set, its outcome is still open. */
export async function makeTilesOfPlan(
  caller: Caller,
  studyId: string,
  { id, wish }: { id: string; wish: TilesOfPlan },
): Promise<Tile[]> {
  const { plan: planned } = await readPlan(caller, studyId, id);
  if (wish.firing !== null) await firingRow(caller, studyId, wish.firing);
  const wishes = planned.tiles.map((tile) => tileOf(tile as PlannedTile, wish));
  const ids = await unlessTaken(
    caller.db.transaction(async (tx) => {
      const made: string[] = [];
      for (const each of wishes) made.push(await insertTile(tx, studyId, each));
      return made;
    }),
    `labels of tiles must be free; one or more of ${wishes.map((each) => each.label).join(', ')} are taken.`,
  );
  return Promise.all(ids.map((tileId) => readTile(caller, studyId, tileId)));
}

function tileOf({ label, place, settings, zones }: PlannedTile, { prefix, firing }: TilesOfPlan): NewTile {
  return {
    label: `${prefix}${label}`,
    firing,
    ...placeOf(place),
    rows: Math.max(1, ...zones.map((zone) => zone.row)),
    columns: Math.max(1, ...zones.map((zone) => zone.column)),
    settings,
    zones: zones.map((zone) => ({
      ...blankZone(zone.label, zone.row, zone.column),
      ...setOn({ ...zone.settings }),
    })),
  };
}

/** A place that somebody named is a setting; a bare number, which no name can be, was drawn by lot. */
const placeOf = (place: string) =>
  /^\d+$/.test(place) ? { place: '', position: Number(place) } : { place, position: null };

/** Coats and thickness have fields of their own; everything else stays a setting. */
function setOn({ [COATS]: coats, [THICKNESS]: micrometres, ...settings }: Settings) {
  return {
    coats: typeof coats === 'number' ? coats : null,
    micrometres: typeof micrometres === 'number' ? micrometres : null,
    settings,
  };
}

const one = (studyId: string, id: string) => and(eq(plan.studyId, studyId), eq(plan.id, id));

function answer({ studyId: _, ...row }: typeof plan.$inferSelect): PlanRecord {
  return { ...row, plan: row.plan as PlanRecord['plan'], createdAt: row.createdAt.toISOString() };
}
