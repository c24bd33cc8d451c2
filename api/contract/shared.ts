import { z } from 'zod';
import { amounts } from './analysis.ts';
import { aim, fired } from './batch.ts';
import { instant } from './common.ts';
import { comparisonText, figureWords } from './figure.ts';
import { placement, sample } from './placement.ts';
import { shareComment } from './share.ts';
import { grade, level } from './tile.ts';
import { chanceCurve, trialAnalysis } from './trial.ts';

/** A kept placement as it is shared. */
const sharedPlacement = z.object({
  kind: z.literal('placement'),
  placement,
  text: comparisonText,
  /** Slip analyses that can be drawn off as one tries; null in a share made without them. */
  slips: z.object({ samples: z.array(sample), names: z.record(z.string(), z.string()) }).nullable(),
  /** Whether the data as reported were frozen with it, so that all of it can be taken as one zip. */
  bundled: z.boolean(),
});
/** A tile as it is drawn, without the ids that it has in its study and without what was not asked for. */
const lyingTile = z.object({
  ...{ label: z.string(), firing: z.string().nullable(), firingName: z.string().nullable() },
  ...{ rows: z.number(), columns: z.number(), settings: z.record(z.string(), level) },
  zones: z.array(
    z.object({
      ...{ label: z.string(), row: z.number().nullable(), column: z.number().nullable() },
      ...{ picture: z.string().nullable(), outline: z.array(z.tuple([z.number(), z.number()])).nullable() },
      ...{ coats: z.number().nullable(), micrometres: z.number().nullable() },
      ...{ grade: grade.nullable(), glassyShare: z.number().nullable() },
    }),
  ),
  pictures: z.array(z.object({ id: z.string(), width: z.number(), height: z.number() })),
});
const made = { name: z.string(), version: z.string(), createdAt: instant };
/** What mattered, from zones as they stood when it was shared. */
const sharedOutcome = z.object({
  kind: z.literal('outcome'),
  ...made,
  analysis: trialAnalysis,
  /** Null where no chance can be predicted. */
  curve: chanceCurve.nullable(),
  zones: z.array(
    z.object({
      ...{ tile: z.string(), label: z.string() },
      factors: z.record(z.string(), level.nullable()),
      grade: grade.nullable(),
      glassyShare: z.number().nullable(),
    }),
  ),
  /** The tiles as they lie; null in a share made without them. */
  tiles: z.array(lyingTile).nullable(),
  words: figureWords.omit({ captions: true }),
});
/** A batch as it is weighed out, and what it becomes in its fire. */
const sharedBench = z.object({
  kind: z.literal('bench'),
  ...made,
  note: z.string(),
  unit: z.enum(['g', 'parts']),
  celsius: z.number(),
  atmosphere: z.string(),
  rows: z.array(
    z.object({
      ...{ name: z.string(), grams: z.number(), running: z.number(), dryPercent: z.number() },
      ...{ water: z.number(), handling: z.string() },
    }),
  ),
  /** As the batch becomes it; what each material brings stays with the owner. */
  result: fired.extend({ fired: fired.shape.fired.omit({ lines: true }) }),
  /** What it was to become, and where that was chosen, what was analysed on tiles made of it: its figure sets both beside it. */
  target: aim.nullable(),
  tiles: z.array(z.object({ label: z.string(), spots: z.number(), amounts })),
});
/** A sheet at the fire: its address under the share answers with what it holds now. */
const sharedSheet = z.object({ kind: z.literal('sheet'), name: z.string() });

const around = { comments: z.boolean(), expiresAt: instant.nullable(), said: z.array(shareComment) };

/** Everything a visitor can reach: a copy made when the share was made. */
export const shared = z
  .discriminatedUnion('kind', [
    sharedPlacement.extend(around),
    sharedOutcome.extend(around),
    sharedBench.extend(around),
    sharedSheet.extend(around),
  ])
  .meta({ id: 'Shared' });

/** What stands in a page that was saved as one file, beside the page itself. */
export interface ShareFile {
  readonly shared: SharedOf<FrozenKind>;
  /** CSV by name. */
  readonly tables: Readonly<Record<string, string>>;
}

export type SharedPlacement = z.infer<typeof sharedPlacement>;
export type SharedOutcome = z.infer<typeof sharedOutcome>;
export type SharedBench = z.infer<typeof sharedBench>;
export type SharedSlips = NonNullable<SharedPlacement['slips']>;
export type Shared = z.infer<typeof shared>;
/** What is frozen, and so has figures, tables and a file of its own. */
export type FrozenKind = 'placement' | 'outcome' | 'bench';
export type SharedOf<Kind extends Shared['kind']> = Extract<Shared, { kind: Kind }>;
