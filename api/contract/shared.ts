import { z } from 'zod';
import { instant } from './common.ts';
import { comparisonText } from './figure.ts';
import { placement, sample } from './placement.ts';
import { shareComment } from './share.ts';

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
/** A sheet at the fire: its address under the share answers with what it holds now. */
const sharedSheet = z.object({ kind: z.literal('sheet'), name: z.string() });

const around = { comments: z.boolean(), expiresAt: instant.nullable(), said: z.array(shareComment) };

/** Everything a visitor can reach: a copy made when the share was made. */
export const shared = z
  .discriminatedUnion('kind', [sharedPlacement.extend(around), sharedSheet.extend(around)])
  .meta({ id: 'Shared' });

/** What stands in a page that was saved as one file, beside the page itself. */
export interface ShareFile {
  readonly shared: SharedOf<'placement'>;
  /** CSV by name. */
  readonly tables: Readonly<Record<string, string>>;
}

export type SharedPlacement = z.infer<typeof sharedPlacement>;
export type SharedSlips = NonNullable<SharedPlacement['slips']>;
export type Shared = z.infer<typeof shared>;
export type SharedOf<Kind extends Shared['kind']> = Extract<Shared, { kind: Kind }>;
