import { sql } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { analyte, technique } from '../../db/schema/schema.ts';
import type { Analyte, Lookups } from '../contract/lookups.ts';
import { ANALYTES } from '../domain/chemistry/analytes.ts';
import { elementOf } from '../domain/chemistry/oxides.ts';
import { MEASURED, UNCERTAINTY_BASES, UNITS } from '../domain/composition/types.ts';
import type { Caller } from './access.ts';
import { TECHNIQUES } from './techniques.ts';

export async function readLookups({ db }: Pick<Caller, 'db'>): Promise<Lookups> {
  const [analytes, techniques] = await Promise.all([
    db.select().from(analyte).orderBy(analyte.position),
    db.select().from(technique).orderBy(technique.position),
  ]);
  return { analytes, techniques, measured: [...MEASURED], units: [...UNITS], bases: [...UNCERTAINTY_BASES] };
}

/** Brings the lookup tables up to date with this version; rows are never removed, since analyses may name them. */
export async function seedLookups(db: Database): Promise<void> {
  await db
    .insert(analyte)
    .values(ANALYTES.map(describe))
    .onConflictDoUpdate({ target: analyte.symbol, set: taken('kind', 'element', 'name', 'position') });
  await db
    .insert(technique)
    .values([...TECHNIQUES])
    .onConflictDoUpdate({ target: technique.code, set: taken('name', 'relative_error', 'note', 'position') });
}

const camel = (column: string) => column.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());

function taken(...columns: string[]) {
  return Object.fromEntries(columns.map((column) => [camel(column), sql.raw(`excluded."${column}"`)]));
}

function describe(symbol: string, position: number): Analyte {
  const element = elementOf(symbol);
  if (element === null) return { symbol, kind: 'other', element, name: NAMES[symbol] ?? symbol, position };
  return { symbol, kind: element === symbol ? 'element' : 'oxide', element, name: symbol, position };
}

const NAMES: Record<string, string> = { LOI: 'Loss on ignition', Total: 'Total as analysed' };
