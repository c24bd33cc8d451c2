import type { Theme } from './figure.ts';

/** Corners of each mark in no particular size; all are drawn with the same area, so that none looks weightier. */
const CORNERS = {
  disc: upright(16),
  triangle: upright(3),
  square: box(1, 1),
  saltire: turned(plus(), 45),
  diamond: [
    [0, -1.25],
    [0.85, 0],
    [0, 1.25],
    [-0.85, 0],
  ],
  'triangle down': turned(upright(3), 180),
  plus: plus(),
  hourglass: [
    [-1, -1.15],
    [1, -1.15],
    [0.16, 0],
    [1, 1.15],
    [-1, 1.15],
    [-0.16, 0],
  ],
  star: spiked(5, 0.4),
  bowtie: [
    [-1.15, -1],
    [0, -0.16],
    [1.15, -1],
    [1.15, 1],
    [0, 0.16],
    [-1.15, 1],
  ],
  'triangle right': turned(upright(3), 90),
  chevron: [
    [-1, 0.1],
    [0, -1],
    [1, 0.1],
    [1, 1],
    [0, -0.1],
    [-1, 1],
  ],
} as const satisfies Record<string, readonly (readonly number[])[]>;

export type Mark = keyof typeof CORNERS;
export const MARKS = Object.keys(CORNERS) as readonly Mark[];

export interface Dot {
  readonly x: number;
  readonly y: number;
}

/** The mark of a group by its place in the study's order. */
export const markOf = (slot: number): Mark => MARKS[slot % MARKS.length]!;
/** Its colour: 8 colours against 12 marks, so that colour and mark together repeat only after 24 groups. */
export const colourOf = (slot: number, theme: Theme): string => theme.palette[slot % theme.palette.length]!;

/** One path with the mark at each dot; `size` is the side of a square of the same area, in px. */
export function marksPath(mark: Mark, size: number, dots: readonly Dot[]): string {
  const corners = cornersOf(mark, size);
  const [first, ...rest] = corners;
  let [x, y] = first!;
  const tail = `${rest
    .map(([nextX, nextY]) => {
      const step = `l${short(nextX - x)},${short(nextY - y)}`;
      [x, y] = [nextX, nextY];
      return step;
    })
    .join('')}z`;
  let path = '';
  const [startX, startY] = first!;
  for (const dot of dots) path += `M${tenth(dot.x + startX)},${tenth(dot.y + startY)}${tail}`;
  return path;
}

/** Corners round the origin of a mark whose area is `size`². */
export function cornersOf(mark: Mark, size: number): readonly (readonly [number, number])[] {
  const corners = CORNERS[mark];
  const scale = size / Math.sqrt(area(corners));
  return corners.map(([x, y]) => [x! * scale, y! * scale] as const);
}

const short = (value: number): number => Math.round(value * 100) / 100;
const tenth = (value: number): number => Math.round(value * 10) / 10;

function area(corners: readonly (readonly number[])[]): number {
  let twice = 0;
  corners.forEach(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    twice += x! * nextY! - nextX! * y!;
  });
  return Math.abs(twice) / 2;
}
function upright(sides: number): number[][] {
  return Array.from({ length: sides }, (_, i) => {
    const angle = (2 * Math.PI * i) / sides - Math.PI / 2;
    return [Math.cos(angle), Math.sin(angle)];
  });
}
function spiked(points: number, inner: number): number[][] {
  return upright(points * 2).map(([x, y], i) => (i % 2 === 0 ? [x!, y!] : [x! * inner, y! * inner]));
}
function box(halfWidth: number, halfHeight: number): number[][] {
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([x, y]) => [x! * halfWidth, y! * halfHeight]);
}
function plus(): number[][] {
  const [arm, thick] = [1, 0.3];
  const quarter = [
    [thick, -thick],
    [thick, -arm],
    [-thick, -arm],
  ];
  return [0, 270, 180, 90].flatMap((degrees) => turned(quarter, degrees));
}
function turned(corners: readonly (readonly number[])[], degrees: number): number[][] {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return corners.map(([x, y]) => [x! * cos - y! * sin, x! * sin + y! * cos]);
}
