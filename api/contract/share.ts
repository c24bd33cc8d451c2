import { z } from 'zod';
import { newBatch } from './batch.ts';
import { id, instant, longText, name } from './common.ts';
import { BATCH_FIGURES, FIGURES, fileOf, TRIAL_FIGURES } from './figure.ts';
import { SHARED_TABLES } from './table-names.ts';
import { chanceRequest, trialRequest } from './trial.ts';

export const sharedFigureFile = fileOf([...FIGURES, ...TRIAL_FIGURES, ...BATCH_FIGURES]);
export const sharedTable = z.enum(Object.values(SHARED_TABLES).flat());

/** What can be shared. A sheet is live; all else is frozen as it is when it is shared. */
export const shareKind = z.enum(['placement', 'outcome', 'bench', 'sheet']);
const terms = {
  /** When it stops opening; null for never. */
  expiresAt: instant.nullable().default(null),
  /** Whether visitors may leave a comment. */
  comments: z.boolean().default(false),
};
export const newShare = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('placement').optional(), placement: id, ...terms }),
    z.object({
      kind: z.literal('outcome'),
      name,
      trial: trialRequest,
      /** The factor that the chance is drawn against; the first where none is named. */
      against: chanceRequest.shape.against.optional(),
      ...terms,
    }),
    z.object({
      kind: z.literal('bench'),
      /** A batch of the study by its id, or one written out: found for a target and not kept. */
      batch: z.union([id, newBatch]),
      /** Whether what was analysed on tiles made of it goes with it. */
      measured: z.boolean().default(false),
      ...terms,
    }),
    z.object({
      ...{ kind: z.literal('sheet'), firing: id },
      /** Three days from now where it is not given: whoever holds the address may write on the sheet. */
      expiresAt: instant.optional(),
    }),
  ])
  .meta({ id: 'NewShare' });

export const shareComment = z
  .object({ id, name: z.string(), text: z.string(), createdAt: instant })
  .meta({ id: 'ShareComment' });

/** A share as its owner sees it. The token is told once, when it is made: only its hash is kept. */
export const share = z
  .object({
    id,
    kind: shareKind,
    name: z.string(),
    state: z.enum(['open', 'expired', 'revoked']),
    comments: z.boolean(),
    expiresAt: instant.nullable(),
    revokedAt: instant.nullable(),
    createdAt: instant,
    said: z.array(shareComment),
  })
  .meta({ id: 'Share' });
export const shares = z.array(share);
export const shareMade = share
  .extend({
    token: z.string(),
    path: z.string(),
    /** The whole address where the service is reached from outside by a name of its own; else null. */
    address: z.string().nullable(),
  })
  .meta({ id: 'ShareMade', description: 'The only answer that holds the token' });

export const newComment = z
  .object({ name: name.max(80), text: longText.max(2_000).min(1, 'needs at least one character') })
  .meta({ id: 'NewComment' });

/** As it is asked for: what has a default may be left out. */
export type ShareWish = z.input<typeof newShare>;
export type SharedFigureFile = z.infer<typeof sharedFigureFile>;
export type SharedTable = z.infer<typeof sharedTable>;
export type NewShare = z.infer<typeof newShare>;
export type Share = z.infer<typeof share>;
export type ShareMade = z.infer<typeof shareMade>;
export type ShareComment = z.infer<typeof shareComment>;
export type NewComment = z.infer<typeof newComment>;
