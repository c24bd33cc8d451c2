import { useState } from 'react';
import type { Tile, ZoneRecord } from '../../../../api/contract/tile.ts';
import { ciede2000 } from '../../../../api/domain/colour/ciede2000.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { Select } from '../../../parts/Select.tsx';
import './pictures.css';

type Colour = NonNullable<ZoneRecord['measuredColour']>;
interface Row {
  readonly label: string;
  readonly colour: Colour;
}

/** Colours measured from pictures, with their errors, and how far each lies from one of them. */
export function ColourTable({ tile }: { readonly tile: Tile }) {
  const rows = tile.zones.flatMap(({ label, measuredColour }): Row[] =>
    measuredColour ? [{ label, colour: measuredColour }] : [],
  );
  const [against, setAgainst] = useState<string | null>(null);
  const base = rows.find(({ label }) => label === against) ?? rows[0];
  if (!base) return null;
  const methods = [...new Set(rows.map(({ colour }) => colour.method))];
  return (
    <section className="stack" aria-labelledby="colours">
      <h2 id="colours">Colours measured</h2>
      {rows.length > 1 && (
        <div className="tile-firing">
          <Select
            label="Difference from"
            choices={rows.map(({ label }) => ({ id: label, label: `Zone ${label}` }))}
            value={base.label}
            onChange={setAgainst}
          />
        </div>
      )}
      <DataTable
        label="Colours measured"
        columns={columns(base, tile)}
        rows={rows}
        rowKey={(row) => row.label}
      />
      <p className="small faint prose-width">
        {methods.join(' ')} Differences are CIEDE2000 (Sharma, Wu and Dalal 2005, DOI 10.1002/col.20070);
        about 1 is close to the smallest that is seen side by side (common practice, no published source).
      </p>
    </section>
  );
}

const one = (value: number) => value.toFixed(1).replace('-', '−');
const withError = ({ lab, error }: Colour, i: 0 | 1 | 2) =>
  error ? `${one(lab[i])} ± ${error[i] < 0.05 ? '< 0.1' : one(error[i])}` : one(lab[i]);
const shareOf = (share: number) =>
  share === 0 ? 'none' : share < 0.01 ? '< 1 %' : `${Math.round(100 * share)} %`;

function columns(base: Row, tile: Tile): Column<Row>[] {
  const right = { numeric: true } as const;
  return [
    { id: 'zone', label: 'Zone', header: true, cell: (row) => row.label },
    { id: 'hex', label: 'Colour', cell: ({ colour }) => <Swatch colour={colour} /> },
    { id: 'l', label: 'Lightness L*', ...right, cell: ({ colour }) => withError(colour, 0) },
    { id: 'a', label: 'Green to red a*', ...right, cell: ({ colour }) => withError(colour, 1) },
    { id: 'b', label: 'Blue to yellow b*', ...right, cell: ({ colour }) => withError(colour, 2) },
    {
      id: 'spread',
      label: 'L* from pixel to pixel',
      ...right,
      cell: ({ colour }) => `± ${one(colour.spread[0])}`,
    },
    { id: 'burnt', label: 'Burnt out', ...right, cell: ({ colour }) => shareOf(colour.burnt) },
    {
      id: 'difference',
      label: `Difference from ${base.label}`,
      ...right,
      cell: (row) => (row === base ? '' : one(ciede2000(row.colour.lab, base.colour.lab))),
    },
    { id: 'cautions', label: 'Mind', prose: true, cell: ({ colour }) => mind(colour, tile) },
  ];
}

export function Swatch({ colour }: { readonly colour: Pick<Colour, 'hex'> }) {
  return (
    <span className="colour-cell">
      <span className="swatch" style={{ background: colour.hex }} aria-hidden="true" /> {colour.hex}
    </span>
  );
}

function mind(colour: Colour, { pictures }: Tile): string {
  const picture = pictures.find(({ id }) => id === colour.picture);
  const stale = picture && JSON.stringify(picture.grey) !== JSON.stringify(colour.grey);
  return [
    ...colour.cautions,
    ...(colour.error ? [] : ['too small an area to tell its error']),
    ...(picture ? [] : ['its picture is no longer here']),
    ...(stale ? ['the grey patch was changed since: measure again'] : []),
  ].join('; ');
}
