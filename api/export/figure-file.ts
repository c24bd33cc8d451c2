import type { FigureFile, FigureForm, FigureLook, FigureName } from '../contract/figure.ts';
import type { Comparison } from '../contract/placement.ts';
import { prepareFigure } from './comparison-figures.ts';
import { drawPdf } from './pdf.ts';
import { paintPng } from './png.ts';
import { drawSvg } from './svg.ts';

export interface DrawnFile {
  readonly bytes: Uint8Array;
  readonly type: string;
  readonly caption: string;
}
const TYPES: Record<FigureForm, string> = {
  svg: 'image/svg+xml; charset=utf-8',
  pdf: 'application/pdf',
  png: 'image/png',
};

/** A figure of a comparison as the bytes of a file; the same drawing in each kind of file. */
export async function drawFigureFile(
  comparison: Comparison,
  file: FigureFile,
  look: FigureLook,
): Promise<DrawnFile> {
  const [name, form] = file.split('.') as [FigureName, FigureForm];
  const { draw, format, title, caption } = prepareFigure(comparison, name, look);
  const svg = draw(drawSvg);
  const bytes = {
    svg: () => new TextEncoder().encode(svg),
    pdf: () => drawPdf({ svg, format, title, caption }),
    png: () => paintPng(svg, look.width),
  };
  return { bytes: await bytes[form](), type: TYPES[form], caption };
}
