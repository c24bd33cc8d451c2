import PDFDocument from 'pdfkit';
import SVGtoPDF from 'svg-to-pdfkit';
import type { Format } from './formats.ts';

const POINTS_PER_MM = 72 / 25.4;

export interface PdfFigure {
  readonly svg: string;
  readonly format: Format;
  readonly title: string;
  readonly caption?: string;
}

/** The bytes of each weight of the one font. */
export type Fonts = Readonly<Record<'regular' | 'semibold', Uint8Array>>;

/** Draws an SVG file as vectors on a PDF page of the format's size, its fonts embedded and its text still text. */
export async function drawPdf(
  { svg, format, title, caption = '' }: PdfFigure,
  fonts: Fonts,
): Promise<Uint8Array> {
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
  for (const [weight, bytes] of Object.entries(fonts)) document.registerFont(weight, bytes);
  const chunks: Uint8Array[] = [];
  document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise((resolve) => document.on('end', resolve));
  SVGtoPDF(document, svg, 0, 0, {
    width,
    height,
    preserveAspectRatio: 'xMidYMid meet',
    assumePt: true,
    fontCallback: (_, bold) => (bold ? 'semibold' : 'regular'),
  });
  document.end();
  await ended;
  return joined(chunks);
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}
