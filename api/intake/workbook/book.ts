import { RequirementError } from '../../domain/requirement.ts';
import type { Archive } from './archive.ts';
import { formatOf, type NumberFormat } from './cell-text.ts';
import { readXml } from './xml.ts';

export interface SheetEntry {
  readonly name: string;
  readonly path: string;
  readonly hidden: boolean;
}

export interface Book {
  readonly sheets: readonly SheetEntry[];
  readonly epoch1904: boolean;
  readonly strings: readonly string[];
  /** By style index of a cell. */
  readonly formats: readonly NumberFormat[];
}

/** What a workbook is made of, besides the cells of its sheets. Refuses macros and what only looks like one. */
export async function readBook(archive: Archive): Promise<Book> {
  refuseOthers(archive.names);
  const { path, strings, styles, targets } = await relations(archive);
  const { sheets, epoch1904 } = await readSheets(archive, path, targets);
  return {
    sheets,
    epoch1904,
    strings: strings && archive.names.includes(strings) ? await readStrings(archive, strings) : [],
    formats: styles && archive.names.includes(styles) ? await readFormats(archive, styles) : [],
  };
}

function refuseOthers(names: readonly string[]): void {
  const lower = names.map((n) => n.toLowerCase());
  if (lower.some((n) => n.endsWith('vbaproject.bin') || n.includes('/macrosheets/')))
    throw new RequirementError(
      'a workbook must be free of macros; this one carries a program: save it as XLSX (without macros) or CSV',
    );
  if (lower.includes('xl/workbook.bin'))
    throw new RequirementError(
      'a workbook must be XLSX; this one is of the binary kind (.xlsb): save it as XLSX or CSV',
    );
  if (lower.includes('content.xml') && lower.includes('mimetype'))
    throw new RequirementError(
      'a workbook must be XLSX; this is an OpenDocument file (.ods or the like): save it as XLSX or CSV',
    );
  if (!lower.some((n) => n.startsWith('xl/') && n.endsWith('workbook.xml')))
    throw new RequirementError(
      `the import needs a table as CSV, TSV or XLSX; this file is ${
        lower.some((n) => n.startsWith('word/'))
          ? 'a text document (.docx)'
          : lower.some((n) => n.startsWith('ppt/'))
            ? 'a presentation (.pptx)'
            : 'a ZIP archive without a workbook: unpack it first'
      }`,
    );
}

interface Relations {
  readonly path: string;
  readonly strings: string | null;
  readonly styles: string | null;
  readonly targets: ReadonlyMap<string, string>;
}

async function relations(archive: Archive): Promise<Relations> {
  const path = archive.names.find((n) => /^xl\/workbook\.xml$/i.test(n)) ?? 'xl/workbook.xml';
  const targets = new Map<string, string>();
  let [strings, styles]: [string | null, string | null] = [null, null];
  await readXml(archive.text('xl/_rels/workbook.xml.rels'), {
    open: (name, { Id, Type = '', Target = '' }) => {
      if (name !== 'Relationship' || Id === undefined) return;
      const target = Target.startsWith('/') ? Target.slice(1) : `xl/${Target.replace(/^\.\//, '')}`;
      targets.set(Id, target);
      if (Type.endsWith('/sharedStrings')) strings = target;
      if (Type.endsWith('/styles')) styles = target;
    },
  });
  return { path, strings, styles, targets };
}

async function readSheets(archive: Archive, path: string, targets: ReadonlyMap<string, string>) {
  const sheets: SheetEntry[] = [];
  let epoch1904 = false;
  await readXml(archive.text(path), {
    open: (name, attributes) => {
      if (name === 'workbookPr') epoch1904 = /^(1|true)$/.test(attributes.date1904 ?? '');
      if (name !== 'sheet') return;
      const id = Object.entries(attributes).find(([key]) => key.endsWith(':id'))?.[1];
      const target = id === undefined ? undefined : targets.get(id);
      if (target?.includes('worksheets/'))
        sheets.push({
          name: attributes.name ?? '',
          path: target,
          hidden: (attributes.state ?? 'visible') !== 'visible',
        });
    },
  });
  return { sheets, epoch1904 };
}

async function readStrings(archive: Archive, path: string): Promise<readonly string[]> {
  const strings: string[] = [];
  let text = '';
  let [inText, phonetic] = [false, false];
  await readXml(archive.text(path), {
    open: (name) => {
      if (name === 'si') text = '';
      if (name === 't') inText = true;
      if (name === 'rPh') phonetic = true;
    },
    text: (piece) => {
      if (inText && !phonetic) text += piece;
    },
    close: (name) => {
      if (name === 't') inText = false;
      if (name === 'rPh') phonetic = false;
      if (name === 'si') strings.push(text);
    },
  });
  return strings;
}

async function readFormats(archive: Archive, path: string): Promise<readonly NumberFormat[]> {
  const codes = new Map<number, string>();
  const formats: NumberFormat[] = [];
  let inCells = false;
  await readXml(archive.text(path), {
    open: (name, attributes) => {
      if (name === 'numFmt') codes.set(Number(attributes.numFmtId), attributes.formatCode ?? '');
      if (name === 'cellXfs') inCells = true;
      if (name === 'xf' && inCells) {
        const id = Number(attributes.numFmtId ?? 0);
        formats.push(formatOf(id, codes.get(id)));
      }
    },
    close: (name) => {
      if (name === 'cellXfs') inCells = false;
    },
  });
  return formats;
}
