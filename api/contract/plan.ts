import { z } from 'zod';
import { PLAN_KINDS } from '../domain/trials/types.ts';
import { id, instant, longText, name, shortText } from './common.ts';
import { settings } from './tile.ts';
import { nextTile, plannedFactor } from './trial.ts';

const seed = z.number().int().min(0).max(2_147_483_647);
export const planRequest = z
  .object({
    kind: z.enum(PLAN_KINDS),
    factors: z.array(plannedFactor).min(1, 'a plan needs at least one factor').max(8),
    tiles: z.number().int().min(1).max(100),
    rows: z.number().int().min(1).max(26),
    columns: z.number().int().min(1).max(26),
    firings: z.number().int().min(1).max(20).default(1),
    replicates: z.number().int().min(1).max(20).default(1),
    generators: z.array(z.string().max(20)).max(8).optional(),
    places: z.array(shortText).max(100).optional(),
    seed,
  })
  .meta({ id: 'PlanRequest' });

/** A plan from a wish, or from a suggested tile that was accepted. */
export const newPlan = z
  .object({
    name,
    note: longText.default(''),
    request: planRequest.optional(),
    accepted: z.object({ tile: nextTile, seed }).optional(),
  })
  .meta({ id: 'NewPlan' });

const words = z.array(z.string());
const int = z.number().int();
const plannedTile = z.object({
  label: z.string(),
  firing: int,
  place: z.string(),
  settings,
  zones: z.array(z.object({ label: z.string(), row: int, column: int, run: int, replicate: int, settings })),
});
export const plan = z
  .object({
    id,
    name: z.string(),
    note: z.string(),
    reason: z.string(),
    plan: z.object({
      kind: z.enum([...PLAN_KINDS, 'next-tile']),
      factors: z.array(plannedFactor),
      tiles: z.array(plannedTile),
      runs: int,
      seed: int,
      resolution: z.number().nullable(),
      generators: words,
      aliases: words,
      notes: words,
    }),
    createdAt: instant,
  })
  .meta({ id: 'Plan' });
export const plans = z.array(plan);

/** Makes replicas with zones of a plan's tiles; labels are the plan's with this in front. */
export const tilesOfPlan = z
  .object({ prefix: shortText.default(''), firing: id.nullable().default(null) })
  .meta({ id: 'TilesOfPlan' });

export type NewPlan = z.infer<typeof newPlan>;
export type PlanRecord = z.infer<typeof plan>;
export type TilesOfPlan = z.infer<typeof tilesOfPlan>;
