import { JSDOM } from 'jsdom';
import type { Figure } from '../figures/figure.ts';
import { svgFile } from '../figures/serialise.ts';
import { THEMES } from '../figures/themes.ts';
import type { Format } from './formats.ts';

let screenless: Window & typeof globalThis;

/** The figure as the text of an SVG file, drawn without a screen by the module that draws it in the page. */
export function drawSvg<Data>(figure: Figure<Data>, data: Data, format: Format): string {
  screenless ??= new JSDOM('').window as unknown as Window & typeof globalThis;
  const { width, height } = format;
  return svgFile(figure, data, { width, height, theme: THEMES[format.theme], window: screenless });
}
