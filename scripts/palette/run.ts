/** Prints the palettes kept in api/figures/themes.ts: `npx tsx scripts/palette/run.ts`. */
import { ciede2000 } from '../../api/domain/colour/ciede2000.ts';
import { labSeen, VISIONS } from './colour-difference.ts';
import { leastDistance, type PaletteWish, searchPalette } from './search.ts';

const light: PaletteWish = {
  count: 9,
  apartFrom: ['#26211e'],
  backgrounds: ['#ffffff', '#fefcf7', '#f5f2ea'],
  leastContrast: 3.05,
  chroma: [34, 72],
  lightness: [28, 64],
  hues: [],
  seed: 0.13,
  steps: 16_000,
};
const FIRST = '#1e5ec5';
const ACCENT = '#c73667';

const apart = (one: string, other: string): number =>
  Math.min(
    ...VISIONS.map((vision) => {
      const distance = ciede2000(labSeen(one, vision), labSeen(other, vision));
      return vision === 'all cones' ? distance / 2 : distance;
    }),
  );

/** Each next colour is the one furthest from those before it, so that few groups are told apart best. */
function ordered(colours: readonly string[], first: string, accent: string): string[] {
  const order = [first];
  const rest = new Set(colours.filter((colour) => colour !== first && colour !== accent));
  while (rest.size > 0) {
    const room = (colour: string) => Math.min(...[...order, accent].map((other) => apart(colour, other)));
    const next = [...rest].reduce((best, colour) => (room(colour) > room(best) ? colour : best));
    rest.delete(next);
    order.push(next);
  }
  return [...order, accent];
}

const hue = (colour: string): number => {
  const [, a, b] = labSeen(colour, 'all cones');
  return ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
};
const report = (name: string, colours: readonly string[]) => {
  console.log(`${name}: ${colours.join(' ')}`);
  for (const vision of VISIONS)
    console.log(`  ${vision}: ≥ ${leastDistance(colours, vision).toFixed(1)} ΔE00`);
};

const onLight = ordered(searchPalette(light).colours, FIRST, ACCENT);
report('light (accent last)', onLight);
const onDark = searchPalette({
  ...light,
  apartFrom: ['#ece6db'],
  backgrounds: ['#191715', '#23201e'],
  leastContrast: 3.6,
  chroma: [26, 72],
  lightness: [46, 88],
  hues: onLight.map(hue),
  seed: 0.39,
});
report('dark (accent last)', onDark.colours);
