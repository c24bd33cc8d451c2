/** Spreadsheet letters of a column index: 0 is A, 26 is AA. */
export function letterOf(index: number): string {
  const before = Math.floor(index / 26);
  return (before > 0 ? letterOf(before - 1) : '') + String.fromCharCode(65 + (index % 26));
}

/** Column index of a cell address (`B7`, `$AA$3`); −1 where there are no letters. */
export function indexOf(address: string): number {
  let index = 0;
  for (const letter of address.replaceAll('$', '')) {
    const place = letter.charCodeAt(0) - 64;
    if (place < 1 || place > 26) break;
    index = index * 26 + place;
  }
  return index - 1;
}
