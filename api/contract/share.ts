import { z } from 'zod';
import { id, instant, longText, name } from './common.ts';
import { comparisonText } from './figure.ts';
import { placement } from './placement.ts';

export const newShare = z
  .object({
    placement: id,
    /** When it stops opening; null for never. */
    expiresAt: instant.nullable().default(null),
    /** Whether visitors may leave a comment. */
    comments: z.boolean().default(false),
  })
  .meta({ id: 'NewShare' });

export const shareComment = z
  .object({ id, name: z.string(), text: z.string(), createdAt: instant })
  .meta({ id: 'ShareComment' });

/** A share as its owner sees it. The token is told once, when it is made: only its hash is kept. */
export const share = z
  .object({
    id,
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
  .extend({ token: z.string(), path: z.string() })
  .meta({ id: 'ShareMade', description: 'The only answer that holds the token' });

/** Everything a visitor can reach: a copy made when the share was made. */
export const shared = z
  .object({
    placement,
    text: comparisonText,
    comments: z.boolean(),
    expiresAt: instant.nullable(),
    said: z.array(shareComment),
  })
  .meta({ id: 'Shared' });

export const newComment = z
  .object({ name: name.max(80), text: longText.max(2_000).min(1, 'needs at least one character') })
  .meta({ id: 'NewComment' });

export type NewShare = z.infer<typeof newShare>;
export type Share = z.infer<typeof share>;
export type ShareMade = z.infer<typeof shareMade>;
export type Shared = z.infer<typeof shared>;
export type ShareComment = z.infer<typeof shareComment>;
export type NewComment = z.infer<typeof newComment>;
