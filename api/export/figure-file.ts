import type { FigureFile, FigureForm, FigureLook, FigureName } from '../contract/figure.ts';
import type { Comparison } from '../contract/placement.ts';
import { prepareFigure } from './comparison-figures.ts';
import type { Prepared } from './prepared.ts';

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
  return drawPrepared(prepareFigure(comparison, name, look), { form, width: look.width });
}

/**
 * A figure that is set up as the bytes of a file; a PNG as wide as asked for, in pixels. What draws it is loaded
 * with the first figure: it takes 70 MB, which a service that draws none should not hold.
 */
export async function drawPrepared(
  { draw, format, title, caption }: Prepared,
  { form, width }: { readonly form: FigureForm; readonly width: number },
): Promise<DrawnFile> {
  const svg = draw((await import('./svg.ts')).drawSvg);
  const bytes = {
    svg: async () => new TextEncoder().encode(svg),
    pdf: async () => {
      const [{ drawPdf }, { fontBytes }] = await Promise.all([import('./pdf.ts'), import('./fonts.ts')]);
      const fonts = { regular: fontBytes('regular'), semibold: fontBytes('semibold') };
      return drawPdf({ svg, format, title, caption }, fonts);
    },
    png: async () => (await import('./png.ts')).paintPng(svg, width),
  };
  return { bytes: await bytes[form](), type: TYPES[form], caption };
}
