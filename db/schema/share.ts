import { boolean, index, jsonb, pgTable, text, timestamp, unique, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key } from './columns.ts';
import { study } from './study.ts';

/**
 * Something of a study laid open at an address nobody can guess. What a visitor sees is a copy made when the share was
 * made: a token leads to this row and to nothing else. Of the token only its SHA-256 is kept.
 */
export const share = pgTable(
  'share',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    tokenHash: text().notNull(),
    payload: jsonb().$type<unknown>().notNull(),
    comments: boolean().notNull().default(false),
    expiresAt: timestamp({ withTimezone: true }),
    revokedAt: timestamp({ withTimezone: true }),
    createdAt: createdAt(),
  },
  (table) => [unique('share_token').on(table.tokenHash), index('share_study').on(table.studyId)],
);

/** What visitors left; plain text. */
export const shareComment = pgTable(
  'share_comment',
  {
    id: key(),
    shareId: uuid()
      .notNull()
      .references(() => share.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    text: text().notNull(),
    createdAt: createdAt(),
  },
  (table) => [index('share_comment_share').on(table.shareId)],
);
