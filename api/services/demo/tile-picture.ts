import { Resvg } from '@resvg/resvg-js';
import { hexOf } from '../../domain/colour/srgb.ts';
import type { Outline, Pixels } from '../../domain/colour/types.ts';
import { FONT_FAMILY, FONT_FILES } from '../../export/fonts.ts';

/**
 * An invented picture of an invented tile: six zones of paint, a grey card, and the light of a cloudy evening that the
 * card takes out again. It says on itself that it is invented.
 */
export interface PaintedTile {
  readonly label: string;
  /** A1, B1, C1, A2, B2, C2. */
  readonly coats: readonly number[];
  readonly grades: readonly ('matt' | 'satin' | 'glossy')[];
}
export interface InventedPicture {
  readonly png: Uint8Array;
  readonly pixels: Pixels;
  readonly grey: { readonly outline: Outline; readonly reflectance: number };
  /** Of each zone, in the order of the coats. */
  readonly outlines: readonly Outline[];
}

const [WIDTH, HEIGHT, CARD] = [900, 600, 0.18];
const LIGHT = [1.15, 1, 0.78] as const;
const lit = (share: readonly [number, number, number]) =>
  hexOf([share[0] * LIGHT[0], share[1] * LIGHT[1], share[2] * LIGHT[2]]);

export function inventTilePicture(tile: PaintedTile): InventedPicture {
  const image = new Resvg(drawing(tile), {
    font: { fontFiles: Object.values(FONT_FILES), loadSystemFonts: false, defaultFontFamily: FONT_FAMILY },
  }).render();
  return {
    png: image.asPng(),
    pixels: { width: image.width, height: image.height, data: image.pixels },
    grey: { outline: boxed(52, 172, 136, 216), reflectance: CARD },
    outlines: tile.coats.map((_, i) => boxed(...inside(i))),
  };
}

type Box = readonly [x: number, y: number, width: number, height: number];
const seat = (i: number): Box => [280 + 190 * (i % 3), 90 + 200 * Math.floor(i / 3), 170, 180];
const inside = (i: number): Box => {
  const [x, y, width, height] = seat(i);
  return [x + 10, y + 10, width - 20, height - 20];
};
const boxed = (x: number, y: number, width: number, height: number): Outline => {
  const [left, right] = [x / WIDTH, (x + width) / WIDTH];
  const [top, bottom] = [y / HEIGHT, (y + height) / HEIGHT];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
};

function drawing({ label, coats, grades }: PaintedTile): string {
  const zones = coats.map((coat, i) => zone(seat(i), { coat, grade: grades[i]! }));
  const shine = grades.map((grade, i) => (grade === 'glossy' ? glint(seat(i)) : ''));
  const words = (x: number, y: number, size: number, text: string) =>
    `<text x="${x}" y="${y}" font-size="${size}" font-family="${FONT_FAMILY}" fill="#1b1815">${text}</text>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}">
<defs><filter id="grain" x="0" y="0" width="1" height="1"><feTurbulence type="fractalNoise" baseFrequency="0.35" numOctaves="2" seed="7"/><feColorMatrix values="0 0 0 0 0.62  0 0 0 0 0.42  0 0 0 0 0.26  0.6 0 0 0 -0.2"/></filter></defs>
<rect width="${WIDTH}" height="${HEIGHT}" fill="${lit([0.55, 0.5, 0.42])}"/>
<rect x="260" y="70" width="590" height="420" rx="8" fill="${lit([0.3, 0.105, 0.05])}"/>
<rect x="40" y="160" width="160" height="240" fill="${lit([CARD, CARD, CARD])}"/>
<g>${zones.join('')}</g>
<rect x="260" y="70" width="590" height="420" rx="8" filter="url(#grain)" opacity="0.3"/>
<g fill="#ffffff">${shine.join('')}</g>
${words(40, 150, 20, '18 % grey')}${words(260, 60, 26, label)}
${words(40, 550, 26, 'Invented picture: this tile was never painted, fired or photographed')}
</svg>`;
}

/** Thin paint lets the red slip through; thick paint that went glassy is darker, and shines. */
function zone([x, y, width, height]: Box, { coat, grade }: { coat: number; grade: string }): string {
  const thin = Math.exp(-0.7 * coat);
  const dark = { matt: 0.035, satin: 0.022, glossy: 0.012 }[grade] ?? 0.035;
  const paint = lit([dark + 0.24 * thin, 0.92 * dark + 0.085 * thin, 0.85 * dark + 0.04 * thin]);
  return `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${paint}"/>`;
}

const glint = ([x, y, width, height]: Box) =>
  `<ellipse cx="${x + 0.68 * width}" cy="${y + 0.26 * height}" rx="22" ry="7"/>`;
