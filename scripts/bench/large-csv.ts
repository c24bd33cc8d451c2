import { randomStream } from '../../api/domain/statistics/random.ts';

const OXIDES = [
  ...(['SiO2', 'Al2O3', 'Fe2O3', 'CaO', 'K2O', 'MgO', 'Na2O', 'TiO2', 'MnO', 'P2O5', 'PbO', 'CuO'] as const),
];
const CENTRE = [52, 16, 7, 5, 3, 2.5, 1.2, 0.9, 0.2, 0.3, 9, 0.15];
const TRACES = ['Rb (ppm)', 'Sr (ppm)', 'Zr (ppm)', 'Ba (ppm)', 'Zn (ppm)'];
const LEVELS = [110, 260, 180, 520, 95];

/**
 * A seeded CSV of invented analyses, as large as asked: labels, ware group, part measured, laboratory, twelve oxides
 * with totals near 100, five traces in ppm, and one cell in fifty below detection. The same seed gives the same bytes.
 */
export function largeCsv(rows: number, seed = 20261125): string {
  const stream = randomStream(seed);
  const header = [
    'Specimen',
    'Ware group',
    'Measured',
    'Laboratory',
    ...OXIDES.map((o) => `${o} (wt%)`),
    ...TRACES,
  ];
  const lines = [header.join(',')];
  for (let i = 1; i <= rows; i++) lines.push(lineOf(i, stream));
  return `${lines.join('\n')}\n`;
}

type Stream = ReturnType<typeof randomStream>;

function lineOf(i: number, stream: Stream): string {
  const raw = CENTRE.map((centre) => centre * Math.exp(0.15 * stream.normal()));
  const sum = raw.reduce((a, b) => a + b, 0);
  const total = 98.5 + 2.5 * stream.uniform();
  const oxides = raw.map((v) => orBelow(((v * total) / sum).toFixed(2), '<0.02', stream));
  const traces = LEVELS.map((level) =>
    orBelow((level * Math.exp(0.3 * stream.normal())).toFixed(0), '<5', stream),
  );
  return [`S-${i}`, `Ware ${'ABCDEFGHIJ'[i % 10]}`, 'body', 'Invented laboratory', ...oxides, ...traces].join(
    ',',
  );
}

function orBelow(figure: string, limit: string, stream: Stream): string {
  return Number(figure) < 2 && stream.uniform() < 0.05 ? limit : figure;
}
