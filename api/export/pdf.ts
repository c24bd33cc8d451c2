import PDFDocument from 'pdfkit';
import SVGtoPDF from 'svg-to-pdfkit';
import { FONT_FAMILY, fontBytes } from './fonts.ts';
import type { Format } from './formats.ts';

const POINTS_PER_MM = 72 / 25.4;

export interface PdfFigure {
  readonly svg: string;
  readonly format: Format;
  readonly title: string;
  readonly caption?: string;
}

/** Draws an SVG file as vectors on a PDF page of the format's size, its fonts embedded and its text still text. */
export async function drawPdf({ svg, format, title, caption = '' }: PdfFigure): Promise<Uint8Array> {
  const [width, height] = format.millimetres.map((mm) => mm * POINTS_PER_MM) as [number, number];
  const document = new PDFDocument({
    size: [width, height],
    margin: 0,
    info: {
      Title: title,
      Subject: caption,
      Producer: 'Nearsherd',
      Creator: 'Nearsherd',
      CreationDate: new Date(0),
    },
  });
  document.registerFont('regular', fontBytes('regular'));
  document.registerFont('semibold', fontBytes('semibold'));
  const chunks: Uint8Array[] = [];
  document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise((resolve) => document.on('end', resolve));
  SVGtoPDF(document, svg, 0, 0, {
    width,
    height,
    preserveAspectRatio: 'xMidYMid meet',
    assumePt: true,
    fontCallback: (family, bold) => (family.includes(FONT_FAMILY) && bold ? 'semibold' : 'regular'),
  });
  document.end();
  await ended;
  return Buffer.concat(chunks);
}
