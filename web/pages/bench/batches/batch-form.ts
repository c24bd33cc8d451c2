import type { Batch, NewBatch } from '../../../../api/contract/batch.ts';
import { type FireForm, formOfFire, readFire, USUAL_FIRE } from '../parts/fire-form.ts';
import { blankLine, type LineRow, readLines, rowsOfLines } from '../parts/lines-form.ts';
import type { Bench } from '../parts/WithShelf.tsx';

/** A batch as typed. */
export interface BatchForm {
  readonly name: string;
  readonly unit: 'g' | 'parts';
  readonly rows: readonly LineRow[];
  readonly fire: FireForm;
  readonly note: string;
  readonly specimens: readonly string[];
}

export const BLANK_BATCH: BatchForm = {
  name: '',
  unit: 'g',
  rows: [0, 1, 2].map(blankLine),
  fire: USUAL_FIRE,
  note: '',
  specimens: [],
};

export function formOfBatch({ name, unit, lines, fire, note, specimens }: Batch): BatchForm {
  return { name, unit, rows: rowsOfLines(lines), fire: formOfFire(fire), note, specimens };
}

export type ReadBatch = Pick<NewBatch, 'lines' | 'fire'> & {
  readonly wrong: ReadonlyMap<number, string>;
  /** What stands in the way of firing it, besides lines that cannot be read. */
  readonly fault: string | null;
};

/** Lines and fire as numbers, as far as they can be read. */
export function readBatch({ rows, fire }: BatchForm, { shelf }: Bench): ReadBatch {
  const { lines, wrong } = readLines(rows, (key) => shelf.materials.get(key)?.name ?? 'The material');
  const read = readFire(fire);
  const settings = typeof read === 'string' ? null : read;
  const atmosphere = settings?.atmosphere ?? 'air';
  return {
    lines,
    wrong,
    fault: typeof read === 'string' ? read : null,
    fire: {
      celsius: settings?.celsius ?? 850,
      atmosphere,
      sulfurPerLead: settings?.sulfurPerLead ? { ...settings.sulfurPerLead } : null,
    },
  };
}
