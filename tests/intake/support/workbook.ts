import { strToU8, type Zippable, zipSync } from 'fflate';
import { letterOf } from '../../../api/intake/letters.ts';

/** A cell as it stands in a sheet: a number, words, a formula with its saved result, or one with a style or type. */
export type Cell =
  | string
  | number
  | null
  | { readonly formula: string; readonly result?: string | number }
  | { readonly value: string | number; readonly style?: number; readonly type?: string };

export interface SheetSpec {
  readonly name: string;
  readonly rows: readonly (readonly Cell[])[];
  readonly state?: 'hidden' | 'veryHidden';
  /** XML before the rows, such as column widths. */
  readonly head?: string;
}

export interface BookSpec {
  readonly sheets: readonly SheetSpec[];
  /** Number formats; style n of a cell is the nth, 0 being General. */
  readonly formats?: readonly string[];
  readonly epoch1904?: boolean;
  readonly more?: Readonly<Record<string, string>>;
}

const NS = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const REL = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** A workbook of hand-made XML (ECMA-376), as small as a reader must accept. */
export function workbook({ sheets, formats = [], epoch1904 = false, more = {} }: BookSpec): Uint8Array {
  const files: Record<string, string> = {
    '[Content_Types].xml': '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    'xl/workbook.xml':
      `<?xml version="1.0"?><workbook xmlns="${NS}" xmlns:r="${REL}"><workbookPr date1904="${epoch1904 ? 1 : 0}"/><sheets>` +
      sheets
        .map(
          (s, i) =>
            `<sheet name="${escapeXml(s.name)}" sheetId="${i + 1}" ${s.state ? `state="${s.state}" ` : ''}r:id="rId${i + 1}"/>`,
        )
        .join('') +
      '</sheets></workbook>',
    'xl/_rels/workbook.xml.rels':
      '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
      sheets
        .map(
          (_, i) =>
            `<Relationship Id="rId${i + 1}" Type="${REL}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
        )
        .join('') +
      `<Relationship Id="rIdS" Type="${REL}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml':
      `<styleSheet xmlns="${NS}"><numFmts>` +
      formats.map((code, i) => `<numFmt numFmtId="${200 + i}" formatCode="${escapeXml(code)}"/>`).join('') +
      '</numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/>' +
      formats.map((_, i) => `<xf numFmtId="${200 + i}"/>`).join('') +
      '</cellXfs></styleSheet>',
    ...Object.fromEntries(sheets.map((s, i) => [`xl/worksheets/sheet${i + 1}.xml`, sheetXml(s)])),
    ...more,
  };
  return zip(files);
}

export function zip(files: Readonly<Record<string, string | Uint8Array>>): Uint8Array {
  const entries: Zippable = {};
  for (const [name, content] of Object.entries(files))
    entries[name] = typeof content === 'string' ? strToU8(content) : content;
  return zipSync(entries, { level: 6 });
}

function sheetXml({ rows, head = '' }: SheetSpec): string {
  const body = rows
    .map(
      (cells, r) =>
        `<row r="${r + 1}">${cells.map((cell, c) => cellXml(cell, `${letterOf(c)}${r + 1}`)).join('')}</row>`,
    )
    .join('');
  return `<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="${NS}">${head}<sheetData>${body}</sheetData></worksheet>`;
}

function cellXml(cell: Cell, address: string): string {
  if (cell === null || cell === '') return '';
  if (typeof cell === 'number') return `<c r="${address}"><v>${cell}</v></c>`;
  if (typeof cell === 'string')
    return `<c r="${address}" t="inlineStr"><is><t>${escapeXml(cell)}</t></is></c>`;
  if ('formula' in cell) {
    const type = typeof cell.result === 'string' ? ' t="str"' : '';
    const result = cell.result === undefined ? '' : `<v>${escapeXml(String(cell.result))}</v>`;
    return `<c r="${address}"${type}><f>${escapeXml(cell.formula)}</f>${result}</c>`;
  }
  const type = cell.type ? ` t="${cell.type}"` : '';
  return `<c r="${address}" s="${cell.style ?? 0}"${type}><v>${escapeXml(String(cell.value))}</v></c>`;
}

function escapeXml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
