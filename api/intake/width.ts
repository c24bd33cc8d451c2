/** Columns up to the last cell that holds something. */
export function widthOf(cells: readonly string[]): number {
  for (let i = cells.length - 1; i >= 0; i--) if (cells[i]!.trim() !== '') return i + 1;
  return 0;
}
