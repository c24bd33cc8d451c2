import { createHash, randomBytes } from 'node:crypto';
import type { share } from '../../db/schema/schema.ts';
import type { Share } from '../contract/share.ts';

/** 192 bits from the system's own generator. */
const TOKEN_BYTES = 24;
export const newToken = (): string => randomBytes(TOKEN_BYTES).toString('base64url');
export const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

type Ends = Pick<typeof share.$inferSelect, 'expiresAt' | 'revokedAt'>;

export function stateOf({ expiresAt, revokedAt }: Ends): Share['state'] {
  if (revokedAt !== null) return 'revoked';
  return expiresAt !== null && expiresAt.getTime() <= Date.now() ? 'expired' : 'open';
}
