import { and, type Column, type SQL, sql } from 'drizzle-orm';

/** Every word of a search must occur, in any case, somewhere in the columns taken together. */
export function everyWord(search: string | undefined, columns: readonly (Column | SQL)[]): SQL | undefined {
  const words = (search ?? '').split(/\s+/).filter((word) => word !== '');
  const text = sql`lower(concat_ws(' ', ${sql.join([...columns], sql`, `)}))`;
  return and(...words.map((word) => sql`${text} like lower(${`%${escaped(word)}%`})`));
}

const escaped = (word: string) => word.replace(/[\\%_]/g, '\\$&');
