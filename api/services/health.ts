import { sql } from 'drizzle-orm';
import type { Caller } from './access.ts';
import { VERSION } from './version.ts';

/** Answers only when the database does. */
export async function readHealth({ db }: Caller): Promise<{ status: 'ok'; version: string }> {
  await db.execute(sql`select 1`);
  return { status: 'ok', version: VERSION };
}
