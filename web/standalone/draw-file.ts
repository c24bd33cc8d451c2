import type { FigureForm, FigureLook, FigureWish } from '../../api/contract/figure.ts';
import type { FrozenKind, SharedOf } from '../../api/contract/shared.ts';
import type { Prepared } from '../../api/export/prepared.ts';
import { prepareSharedFigure, type SharedFigure } from '../../api/export/share-figures.ts';
import { svgFile } from '../../api/figures/serialise.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { fontFaces } from './fonts.ts';
import { paintPng } from './paint-png.ts';

/** A figure as a file, drawn here as the service would draw it. */
export async function drawFile(shared: SharedOf<FrozenKind>, file: string, wish: FigureWish): Promise<Blob> {
  const [name, form] = file.split('.') as [SharedFigure, FigureForm];
  const look = { ...wish, oxides: wish.oxides?.split(',') } as FigureLook;
  const figure = await prepareSharedFigure(shared, name, look);
  const svg = svgOf(figure);
  if (form === 'svg') return new Blob([svg], { type: 'image/svg+xml' });
  if (form === 'png') return paintPng(svg, { ...figure.format, wide: look.width });
  return pdfOf(figure, svg);
}

const svgOf = ({ draw }: Prepared): string =>
  draw((figure, data, { width, height, theme }) =>
    svgFile(figure, data, { width, height, theme: THEMES[theme], window }),
  );

/** What makes PDF is half a megabyte, started only where one is asked for. */
async function pdfOf({ format, title, caption }: Prepared, svg: string): Promise<Blob> {
  const { drawPdf } = await import('../../api/export/pdf.ts');
  const [regular, semibold] = fontFaces().map(({ bytes }) => bytes()) as [Uint8Array, Uint8Array];
  const pdf = await drawPdf({ svg, format, title, caption }, { regular, semibold });
  return new Blob([pdf as Uint8Array<ArrayBuffer>], { type: 'application/pdf' });
}
