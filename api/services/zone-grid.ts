import type { NewZone } from '../contract/tile.ts';
import { Failure } from './failure.ts';

const letter = (column: number) => String.fromCharCode(64 + column);

/** `B2`: second column, second row. */
export const zoneLabel = (row: number, column: number): string => `${letter(column)}${row}`;

/** Every place of a grid, nothing noted yet. */
export function emptyGrid(rows: number, columns: number): NewZone[] {
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns) + 1, (i % columns) + 1];
    return blankZone(zoneLabel(row, column), row, column);
  });
}

export const blankZone = (label: string, row: number, column: number): NewZone => ({
  ...{ label, row, column, coats: null, micrometres: null, settings: {} },
  ...{ grade: null, glassyShare: null, colour: '', defects: [], note: '' },
});

/** Zones lie on the grid, each label once. */
export function requireGrid(
  zones: readonly Pick<NewZone, 'label' | 'row' | 'column'>[],
  { rows, columns }: { rows: number; columns: number },
): void {
  const labels = zones.map((zone) => zone.label);
  const twice = labels.find((label, i) => labels.indexOf(label) !== i);
  if (twice !== undefined) refuse(`each zone of a tile needs a label of its own; ${twice} is there twice.`);
  const off = zones.find((zone) => zone.row > rows || zone.column > columns);
  if (off)
    refuse(
      `zones must lie on the tile's grid of ${rows} rows and ${columns} columns; ${off.label} is in row ${off.row}, column ${off.column}.`,
    );
}

function refuse(message: string): never {
  throw new Failure('invalid', message, [{ at: 'zones', message }]);
}
