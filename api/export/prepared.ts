import type { FigureFormat } from '../contract/figure.ts';
import type { Figure, Theme } from '../figures/figure.ts';
import { THEMES } from '../figures/themes.ts';
import { FORMATS, type Format, grown } from './formats.ts';

/** A figure ready to be drawn on its sheet, with what is to be said beneath it. */
export interface Prepared {
  readonly draw: (render: <Data>(figure: Figure<Data>, data: Data, format: Format) => string) => string;
  readonly format: Format;
  readonly title: string;
  readonly caption: string;
}

export interface Around<Data> {
  readonly look: { readonly format: FigureFormat };
  readonly caption: string;
  /** px the figure wants at a width, where it wants more the more it has to show. */
  readonly height?: (data: Data, width: number, theme: Theme) => number;
}

/** Sets a figure up on the sheet it is asked for. */
export function prepared<Data extends { readonly title: string }>(
  figure: Figure<Data>,
  data: Data,
  { look, caption, height }: Around<Data>,
): Prepared {
  const sheet = FORMATS[look.format];
  const format = height ? grown(sheet, height(data, sheet.width, THEMES[sheet.theme])) : sheet;
  return { draw: (render) => render(figure, data, format), format, title: data.title, caption };
}
