import { z } from 'zod';
import type { Sample } from '../domain/composition/types.ts';
import type { Contribution, GroupPlacement, Placement } from '../domain/placement/types.ts';
import { amounts, measured, normalisationSettings } from './analysis.ts';
import { id, instant, longText, name } from './common.ts';
import { modelSettings, referenceModel } from './model.ts';
import { slipChoice, slipDrawn } from './slip-choice.ts';
import { COMPARISON_TABLES } from './table-names.ts';

const contribution = z
  .object({
    oxide: z.string(),
    measured: z.number(),
    centre: z.number(),
    factor: z.number(),
    share: z.number(),
    d2: z.number().nullable(),
    z: z.number().nullable(),
  })
  .meta({ id: 'Contribution' }) satisfies z.ZodType<Contribution>;

const rank = z.object({ value: z.number(), atLeastAsFar: z.number(), of: z.number() });

const groupPlacement = z
  .object({
    group: z.string(),
    name: z.string(),
    n: z.number().int(),
    p: z.number().int().nullable(),
    distance: z.number(),
    d2: z.number().nullable(),
    membership: z.number().nullable(),
    membershipRefusal: z.string().nullable(),
    df: z.tuple([z.number(), z.number()]).nullable(),
    typicality: rank.nullable(),
    off: z.object({ distance: z.number(), furthestMember: z.number(), rank }).nullable(),
    verdict: z.enum(['inside', 'borderline', 'outside', 'unknown']),
    method: z.string(),
    refusal: z.string().nullable(),
    warnings: z.array(z.string()),
    leaveOneOut: z.boolean(),
    contributions: z.array(contribution),
  })
  .meta({ id: 'GroupPlacement' }) satisfies z.ZodType<GroupPlacement>;

/** Where one sample lies. */
export const placed = z
  .object({
    id: z.string(),
    label: z.string(),
    spots: z.number().int(),
    parts: z.array(z.number()),
    coordinates: z.array(z.number()),
    scores: z.array(z.number()),
    groups: z.array(groupPlacement),
    nearest: z.array(
      z.object({ id: z.string(), label: z.string(), group: z.string(), distance: z.number() }),
    ),
    replaced: z.array(z.object({ oxide: z.string(), limit: z.number(), by: z.number() })),
    sentence: z.string(),
  })
  .meta({ id: 'PlacedSample' }) satisfies z.ZodType<Placement>;

export const sample = z
  .object({
    id: z.string(),
    label: z.string(),
    group: z.string().nullable(),
    role: z.enum(['reference', 'replica']),
    measured,
    spots: z.number().int(),
    rawTotal: z.number(),
    amounts,
  })
  .meta({ id: 'Sample' }) satisfies z.ZodType<Sample>;

/** What is asked: which groups and oxides, how, and which replicas. */
export const comparisonRequest = z
  .object({
    settings: modelSettings,
    normalisation: normalisationSettings.default(() => normalisationSettings.parse({})),
    measured: measured.default('paint'),
    /** Specimen ids of the replicas to place; null places every replica so measured. */
    replicas: z.array(id).max(500).nullable().default(null),
    /** Specimens left out by hand, each with the reason that is shown beside the result. */
    leaveOut: z
      .array(z.object({ specimen: id, reason: longText }))
      .max(5_000)
      .default([]),
    /** Slip drawn off before comparing, for replicas and references alike. */
    slip: z.array(slipChoice).max(5_000).default([]),
  })
  .meta({ id: 'ComparisonRequest' });

const exclusion = z
  .object({
    specimen: z.string(),
    label: z.string(),
    group: z.string().nullable(),
    /** The analysis that could not be used; null when the whole specimen is left out. */
    analysis: z.string().nullable(),
    reason: z.string(),
  })
  .meta({ id: 'Exclusion' });

/** Something a reader should know of a sample that was used all the same, such as a low total. */
const remark = z
  .object({ specimen: z.string(), label: z.string(), message: z.string() })
  .meta({ id: 'Remark' });

export const comparison = z
  .object({
    request: comparisonRequest,
    model: referenceModel,
    placements: z.array(placed),
    /** The replicas as they entered the comparison, so that a page can place them again as settings are tried. */
    replicas: z.array(sample),
    /** References in brief; their compositions are in `model.members`. */
    references: z.array(sample.omit({ amounts: true, role: true })),
    groups: z.array(
      z.object({
        id: z.string(),
        name: z.string(),
        position: z.number().int(),
        /** Specimens of the group, and how many of them enter. */
        specimens: z.number().int(),
        used: z.number().int(),
      }),
    ),
    excluded: z.array(exclusion),
    remarks: z.array(remark),
    /** Samples whose slip was drawn off; all others still have it in. `replicas` are as measured, slip in. */
    slip: z.array(slipDrawn),
  })
  .meta({ id: 'Comparison' });

export const newPlacement = z
  .object({ name, note: longText.default(''), comparison: comparisonRequest })
  .meta({ id: 'NewPlacement' });
export const placementChange = z.object({ name, note: longText }).partial();

const summary = z.object({
  id,
  name: z.string(),
  note: z.string(),
  /** Version of the service that computed it. */
  version: z.string(),
  createdAt: instant,
  sentences: z.array(z.string()),
});
export const placementSummary = summary.meta({ id: 'PlacementSummary' });
export const placements = z.array(placementSummary);
/** A frozen comparison: what was asked and what was answered, whatever changes in the study later. */
export const placement = summary.extend({ result: comparison }).meta({ id: 'Placement' });

export const comparisonTable = z.enum(COMPARISON_TABLES);

export type ComparisonRequest = z.infer<typeof comparisonRequest>;
export type Comparison = z.infer<typeof comparison>;
export type Exclusion = z.infer<typeof exclusion>;
export type Remark = z.infer<typeof remark>;
export type NewPlacement = z.infer<typeof newPlacement>;
export type PlacementSummary = z.infer<typeof placementSummary>;
export type FrozenPlacement = z.infer<typeof placement>;
export type ComparisonTable = z.infer<typeof comparisonTable>;
