// Reference answers for tests/domain/colour, by culori, an independent library of colour conversions:
// `npm i culori@4.0.2` in a folder of its own, then `NODE_PATH=<that folder>/node_modules node scripts/reference/colour.cjs`.
// Writes tests/fixtures/colour/culori.json: sRGB as #rrggbb → CIE L*a*b* against D65.
const { writeFileSync } = require('node:fs');
const { converter } = require('culori');
const { version } = require('culori/package.json');

const toLab = converter('lab65');
const ends = [0, 128, 255];
const corners = ends.flatMap((r) => ends.flatMap((g) => ends.map((b) => [r, g, b])));
const potter = [
  [64, 48, 40],
  [38, 34, 30],
  [178, 92, 60],
  [120, 72, 44],
  [19, 19, 18],
  [233, 224, 205],
];
const hex = (rgb) => `#${rgb.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
const colours = [...corners, ...potter].map((rgb) => {
  const { l, a, b } = toLab(hex(rgb));
  return { hex: hex(rgb), lab: [l, a, b] };
});
const _meta = { made: 'scripts/reference/colour.cjs', library: `culori ${version}`, node: process.version };
writeFileSync('tests/fixtures/colour/culori.json', `${JSON.stringify({ _meta, colours }, null, 1)}\n`);
