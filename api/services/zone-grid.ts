import type { NewZone } from '../contract/tile.ts';
import { requireOutline } from '../domain/colour/outline.ts';
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
  ...{ label, row, column, picture: null, outline: null },
  ...{ coats: null, micrometres: null, settings: {} },
  ...{ grade: null, glassyShare: null, colour: '', measuredColour: null, defects: [], note: '' },
});

/** Zones lie on the grid or are drawn only, each label once. */
export function requireGrid(
  zones: readonly Pick<NewZone, 'label' | 'row' | 'column'>[],
  { rows, columns }: { rows: number; columns: number },
): void {
  const labels = zones.map((zone) => zone.label);
  const twice = labels.find((label, i) => labels.indexOf(label) !== i);
  if (twice !== undefined) refuse(`each zone of a tile needs a label of its own; ${twice} is there twice.`);
  const half = zones.find((zone) => (zone.row === null) !== (zone.column === null));
  if (half) refuse(`a zone needs both row and column or neither; ${half.label} has one of them.`);
  if ((rows === 0) !== (columns === 0))
    refuse(`a grid needs both rows and columns or neither; this one has ${rows} by ${columns}.`);
  const off = zones.find((zone) => (zone.row ?? 0) > rows || (zone.column ?? 0) > columns);
  if (off)
    refuse(
      `zones must lie on the tile's grid of ${rows} rows and ${columns} columns; ${off.label} is in row ${off.row}, column ${off.column}.`,
    );
}

/** Outlines enclose a place in a picture of the same tile. */
export function requireDrawn(
  zones: readonly Pick<NewZone, 'label' | 'picture' | 'outline'>[],
  pictures: readonly { readonly id: string }[],
): void {
  for (const { label, picture, outline } of zones) {
    if ((picture === null) !== (outline === null))
      refuse(`a drawn zone needs both a picture and its outline there; ${label} has one of them.`);
    if (outline) requireOutline(outline);
    if (picture !== null && pictures.every((each) => each.id !== picture))
      refuse(`a zone is drawn on a picture of its own tile; ${label} is drawn on another.`);
  }
}

function refuse(message: string): never {
  throw new Failure('invalid', message, [{ at: 'zones', message }]);
}
