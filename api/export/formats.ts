import type { FigureFormat } from '../contract/figure.ts';
import type { Theme } from '../figures/figure.ts';

/** Where a figure is going: its theme and its size, in the figure's px and on paper or screen in mm. */
export interface Format {
  readonly name: string;
  readonly theme: Theme['name'];
  readonly width: number;
  readonly height: number;
  readonly millimetres: readonly [number, number];
}

const POINTS_PER_MM = 72 / 25.4;
/** One px of a figure for slide or print is one point, so type keeps the size its theme gives it. */
const inPoints = ([width, height]: readonly [number, number]) => ({
  width: Math.round(width * POINTS_PER_MM),
  height: Math.round(height * POINTS_PER_MM),
});
const format = (name: string, theme: Theme['name'], millimetres: readonly [number, number]): Format => ({
  name,
  theme,
  ...inPoints(millimetres),
  millimetres,
});

/**
 * Slides are 7.5 in high, as presentation programs make them; column widths are those journals commonly ask for
 * (common practice, no published source).
 */
export const FORMATS = {
  'slide-16-9': format('Slide, 16:9', 'slide', [338.7, 190.5]),
  'slide-4-3': format('Slide, 4:3', 'slide', [254, 190.5]),
  'column-single': format('Single column', 'print', [85, 80]),
  'column-double': format('Double column', 'print', [175, 120]),
  page: format('Page, light', 'page-light', [254, 170]),
  'page-dark': format('Page, dark', 'page-dark', [254, 170]),
} as const satisfies Record<FigureFormat, Format>;

/** No higher than a column on A4 paper with its margins. */
const HIGHEST = 250;

/** The same sheet made as high as the figure needs, if that is more; a slide stays as it is, a page ends at its foot. */
export function grown(sheet: Format, wanted: number): Format {
  if (sheet.theme === 'slide' || wanted <= sheet.height) return sheet;
  const [width] = sheet.millimetres;
  const foot = sheet.theme === 'print' ? Math.floor((HIGHEST * sheet.width) / width) : wanted;
  const height = Math.ceil(Math.min(wanted, foot));
  return { ...sheet, height, millimetres: [width, (width * height) / sheet.width] };
}
