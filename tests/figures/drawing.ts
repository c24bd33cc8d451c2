import { JSDOM } from 'jsdom';
import { SaxesParser } from 'saxes';
import type { Figure, Theme } from '../../api/figures/figure.ts';
import { svgFile } from '../../api/figures/serialise.ts';
import { THEMES } from '../../api/figures/themes.ts';

const { window } = new JSDOM('');

export interface Sheet {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: Theme;
}

/** A figure as an SVG file, and the same read back by the page's own means. */
export function drawn<Data>(figure: Figure<Data>, data: Data, sheet: Sheet = {}) {
  const at = { width: 760, height: 560, theme: THEMES['page-light'], ...sheet, window: window as never };
  const text = svgFile(figure, data, at);
  const svg = new window.DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  return { text, svg: svg as unknown as SVGSVGElement };
}

/** Reads a document with a strict XML parser; gives every id in it. Throws where it is not well-formed. */
export function idsIn(xml: string): string[] {
  const ids: string[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ attributes }) => {
    const id = (attributes as Record<string, string>).id;
    if (id !== undefined) ids.push(id);
  });
  parser.write(xml).close();
  return ids;
}

/** px → value, as a reader with a ruler would find it from two ticks of a linear axis. */
export function rulerOf(svg: SVGSVGElement, axis: 'x' | 'y'): (px: number) => number {
  const ticks = [...svg.querySelectorAll(`.axis.${axis} .tick`)].map((tick) => {
    const [across, up] = numbersIn(tick.getAttribute('transform')!);
    const px = (axis === 'x' ? across! : up!) - 0.5;
    return { px, value: Number(tick.querySelector('text')!.textContent!.replace('−', '-')) };
  });
  const [first, last] = [ticks[0]!, ticks.at(-1)!];
  const unit = (last.value - first.value) / (last.px - first.px);
  return (px) => first.value + (px - first.px) * unit;
}

export const numbersIn = (text: string): number[] =>
  [...text.matchAll(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g)].map(Number);

/** Corners of each closed piece of a path made of M, l and z. */
export function piecesOf(d: string): [number, number][][] {
  return [...d.matchAll(/M([^Mz]+)z/g)].map(([, body]) => {
    const [start, ...steps] = body!.split('l').map(numbersIn);
    const corners: [number, number][] = [[start![0]!, start![1]!]];
    for (const [dx, dy] of steps) {
      const [x, y] = corners.at(-1)!;
      corners.push([x + dx!, y + dy!]);
    }
    return corners;
  });
}

/** Middle of a piece's bounding box. */
export function middleOf(corners: readonly (readonly [number, number])[]): [number, number] {
  const span = (at: 0 | 1) => corners.map((corner) => corner[at]);
  const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return [middle(span(0)), middle(span(1))];
}
