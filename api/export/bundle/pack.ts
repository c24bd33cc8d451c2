import { type Zippable, zipSync } from 'fflate';
import type { BundledPlacement } from '../../contract/bundle.ts';
import type { ComparisonData } from '../../contract/comparison-data.ts';
import { type ComparisonText, FIGURES, type FigureFile, figureLook } from '../../contract/figure.ts';
import { RequirementError } from '../../domain/requirement.ts';
import { drawFigureFile } from '../figure-file.ts';
import { type BundleFile, describeBundle } from './descriptor.ts';
import { TABLE_NAMES, TABLES, writeTables } from './tables.ts';

export interface BundleContent {
  readonly placement: BundledPlacement;
  readonly data: ComparisonData;
  readonly text: ComparisonText;
}
/** Zip files know no time zone and no time before 1980: the same bundle is the same bytes anywhere. */
const WHEN = new Date(1980, 0, 1);
const utf8 = (text: string) => new TextEncoder().encode(text);
const json = (value: unknown) => utf8(`${JSON.stringify(value, null, 1)}\n`);

/** One zip with everything a placement rests on and gives: data, settings, result, figures and words. */
export async function packBundle(content: BundleContent): Promise<Uint8Array> {
  const { placement, data, text } = content;
  const tables = writeTables(data);
  const files: BundleFile[] = [
    ...TABLE_NAMES.map((table) => ({
      ...{ path: `data/${table}.csv`, bytes: utf8(tables[table]), title: TABLES[table].title },
      ...{ type: 'text/csv', table },
    })),
    file('placement.json', json(placement), 'Settings and result'),
    file('methods.txt', utf8(wordsOf(text)), 'Methods, captions and sources'),
    file('citations.json', json(text), 'The same, for programs'),
    ...(await figuresOf(placement)),
  ];
  const about = { ...placement, sources: text.sources };
  const entries = [{ path: 'datapackage.json', bytes: json(describeBundle(files, about)) }, ...files];
  const zippable: Zippable = Object.fromEntries(
    entries.map(({ path, bytes }) => [path, [bytes, { mtime: WHEN, level: 6 }]]),
  );
  return zipSync(zippable);
}

const TYPES: Record<string, string> = {
  json: 'application/json',
  txt: 'text/plain',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
};
const file = (path: string, bytes: Uint8Array, title: string): BundleFile => ({
  ...{ path, bytes, title },
  type: TYPES[path.split('.').at(-1)!]!,
});

/** Every figure that can be drawn, as SVG and PDF of a double column. */
async function figuresOf({ result }: BundledPlacement): Promise<BundleFile[]> {
  const look = figureLook.parse({ format: 'column-double' });
  const names = FIGURES.flatMap((figure) => [`${figure}.svg`, `${figure}.pdf`] as FigureFile[]);
  const drawn: BundleFile[] = [];
  for (const name of names) {
    try {
      const { bytes, caption } = await drawFigureFile(result, name, look);
      drawn.push(file(`figures/${name}`, bytes, caption));
    } catch (error) {
      if (!(error instanceof RequirementError)) throw error;
    }
  }
  return drawn;
}

function wordsOf({ methods, captions, sources, references }: ComparisonText): string {
  const cite = (text: string, doi: string) => (doi === '' ? text : `${text} doi:${doi}`);
  return [
    ...['METHODS', methods, ''],
    ...['CAPTIONS', ...Object.entries(captions).map(([name, caption]) => `${name}: ${caption}`), ''],
    ...['SOURCES', ...sources.map(({ name, n, source, doi }) => cite(`${name} (${n}): ${source}`, doi)), ''],
    ...['REFERENCES', ...references.map(({ text, doi }) => cite(text, doi)), ''],
  ].join('\n');
}
