import { interpret } from '../../../api/intake/interpret.ts';
import { previewOf } from '../../../api/intake/preview.ts';
import { readPasted, readTable } from '../../../api/intake/read-table.ts';
import type { Choices, DraftAnalysis, Preview, Problem, Table } from '../../../api/intake/types.ts';
import { NO_DEFAULTS } from '../../../api/intake/understand.ts';

export const BODY: Partial<Choices> = { defaults: { ...NO_DEFAULTS, measured: 'body' } };

export const csv = (text: string): Promise<Table> =>
  readTable(new TextEncoder().encode(text), { fileName: 'test.csv' });

/** Preview of a CSV text as body analyses, unless the choices say otherwise. */
export async function previewCsv(text: string, choices: Partial<Choices> = {}): Promise<Preview> {
  return previewOf(await csv(text), { choices: { ...BODY, ...choices } });
}

export async function previewPasted(text: string, choices: Partial<Choices> = {}): Promise<Preview> {
  return previewOf(await readPasted(text), { choices: { ...BODY, ...choices } });
}

export function readAll(table: Table, choices: Choices): { analyses: DraftAnalysis[]; problems: Problem[] } {
  const parts = [...interpret(table, choices)];
  return { analyses: parts.flatMap((p) => p.analyses), problems: parts.flatMap((p) => p.problems) };
}

/** `SiO2 62.3 wt%`, `Pb <10 ppm`: a value in one line. */
export function told(analysis: DraftAnalysis | undefined): string[] {
  return (analysis?.values ?? []).map((v) =>
    [
      v.analyte,
      v.belowDetection ? `<${v.limit ?? '?'}` : v.value,
      v.uncertainty === null ? '' : `± ${v.uncertainty} (${v.basis})`,
      v.unit,
    ]
      .filter((w) => w !== '')
      .join(' '),
  );
}

export const errors = (preview: { problems: readonly Problem[] }) =>
  preview.problems.filter((p) => p.severity === 'error').map((p) => p.message);
export const warnings = (preview: { problems: readonly Problem[] }) =>
  preview.problems.filter((p) => p.severity === 'warning').map((p) => p.message);
export const codes = (preview: { problems: readonly Problem[] }) => [
  ...new Set(preview.problems.map((p) => p.code)),
];
