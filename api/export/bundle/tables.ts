import { type ComparisonData, comparisonData } from '../../contract/comparison-data.ts';
import { RequirementError } from '../../domain/requirement.ts';
import { type Cell, type Field, readCsv, writeCsv } from './csv.ts';

const words = (...names: string[]): Field[] => names.map((name) => ({ name, type: 'string' }));
const maybe = (name: string): Field => ({ name, type: 'string', nullable: true });
const number = (name: string): Field => ({ name, type: 'number' });

export interface Table {
  readonly title: string;
  readonly fields: readonly Field[];
  readonly key?: string;
  /** Column → table whose key it holds. */
  readonly refersTo: Readonly<Record<string, TableName>>;
}
export type TableName = 'groups' | 'specimens' | 'analyses' | 'values';

/** The tables of a bundle. Rows stand in the order in which a comparison reads them. */
export const TABLES: Readonly<Record<TableName, Table>> = {
  groups: {
    title: 'Ware groups',
    fields: [...words('id', 'name', 'period', 'place', 'source', 'doi', 'notes'), number('position')],
    key: 'id',
    refersTo: {},
  },
  specimens: {
    title: 'Specimens: sherds and replicas',
    fields: [...words('id', 'label', 'catalogueNumber', 'kind'), maybe('group'), ...words('notes')],
    key: 'id',
    refersTo: { group: 'groups' },
  },
  analyses: {
    title: 'Analyses, one row a spot',
    fields: [
      ...[...words('id', 'specimen', 'measured'), maybe('technique'), number('relativeError')],
      ...[...words('laboratory', 'instrument'), maybe('date'), ...words('source', 'doi', 'spot', 'note')],
    ],
    key: 'id',
    refersTo: { specimen: 'specimens' },
  },
  values: {
    title: 'Figures as reported, one row an analyte of an analysis',
    fields: [
      ...[...words('analysis', 'analyte'), number('value'), ...words('unit'), number('uncertainty')],
      ...[maybe('basis'), { name: 'belowDetection', type: 'boolean' } as const],
      ...[number('limit'), number('resolution')],
    ],
    refersTo: { analysis: 'analyses' },
  },
};
export const TABLE_NAMES = Object.keys(TABLES) as TableName[];

type Row = Readonly<Record<string, unknown>>;

/** Everything compared, as reported, as the text of four CSV files. */
export function writeTables({ groups, specimens, analyses }: ComparisonData): Record<TableName, string> {
  const values = analyses.flatMap(({ id, reported }) => reported.map((one) => ({ analysis: id, ...one })));
  const rows: Record<TableName, readonly Row[]> = { groups, specimens, analyses, values };
  const write = (name: TableName) => {
    const { fields } = TABLES[name];
    return writeCsv(
      fields,
      rows[name].map((row) => fields.map((field) => row[field.name] as Cell)),
    );
  };
  return Object.fromEntries(TABLE_NAMES.map((name) => [name, write(name)])) as Record<TableName, string>;
}

/** The same read back; throws a requirement where a table is not what `writeTables` makes. */
export function readTables(texts: Readonly<Record<TableName, string>>): ComparisonData {
  const [groups, specimens, spots, values] = TABLE_NAMES.map((name) => rowsOf(name, texts[name]));
  const reported = new Map(spots!.map(({ id }): [unknown, Row[]] => [id, []]));
  for (const { analysis, ...value } of values!) {
    const list = reported.get(analysis!);
    if (list === undefined)
      throw new RequirementError(`values need their analysis; that of ${analysis} is not in analyses.csv`);
    list.push(value);
  }
  const analyses = spots!.map((spot) => ({ ...spot, reported: reported.get(spot.id) }));
  const read = comparisonData.safeParse({ groups, specimens, analyses });
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  throw new RequirementError(
    `the tables must fit their descriptor; ${issue!.path.join('.')}: ${issue!.message}`,
  );
}

function rowsOf(name: TableName, text: string) {
  try {
    return readCsv(TABLES[name].fields, text);
  } catch (error) {
    throw new RequirementError(
      `${name}.csv must be a table as its descriptor says; ${(error as Error).message}`,
    );
  }
}
