import type { Choices, Preview } from '../../../api/contract/intake.ts';
import { ScrollRegion } from '../../parts/ScrollRegion.tsx';

function rowWord(number: number, choices: Choices): string {
  if (number === choices.headerRow) return 'names';
  if (number === choices.unitsRow) return 'units';
  if (choices.limitRows.includes(number)) return 'limits';
  if (choices.leaveOutRows.includes(number) || number < choices.firstRow) return 'left out';
  return '';
}

/** The table as the file holds it, row numbers as a spreadsheet shows them. */
export function FirstRows({ preview, choices }: { readonly preview: Preview; readonly choices: Choices }) {
  const { letters } = preview;
  return (
    <section className="stack" aria-labelledby="rows">
      <h2 id="rows">First rows of the file</h2>
      <ScrollRegion label="First rows of the file" className="dense">
        <table>
          <thead>
            <tr>
              <th scope="col">Row</th>
              {letters.map((letter) => (
                <th scope="col" key={letter}>
                  {letter}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {preview.rows.map((row) => (
              <tr key={row.number} className={row.number === choices.headerRow ? 'names' : undefined}>
                <th scope="row">
                  {row.number} <span className="faint small">{rowWord(row.number, choices)}</span>
                </th>
                {letters.map((letter, index) => (
                  <td key={letter}>{row.cells[index] ?? ''}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      {preview.columnCount > letters.length && (
        <p className="faint">
          {letters.length} of {preview.columnCount} columns are shown.
        </p>
      )}
    </section>
  );
}
