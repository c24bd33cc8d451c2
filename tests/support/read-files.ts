import { PNG } from 'pngjs';
import { SaxesParser } from 'saxes';

/** Names, text and drawing operators of a PDF, by pdf.js, which shares no code with what wrote it. */
export async function readPdf(bytes: Uint8Array) {
  const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const pdf = await getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 })
    .promise;
  const page = await pdf.getPage(1);
  const content = await page.getTextContent();
  const { fnArray, argsArray } = await page.getOperatorList();
  const count = (...operators: number[]) => fnArray.filter((one) => operators.includes(one)).length;
  const fontIds = new Set(
    fnArray.flatMap((one, i) => (one === OPS.setFont ? [String(argsArray[i]![0])] : [])),
  );
  const fonts = [...fontIds].map((id) => {
    const { name, missingFile } = page.commonObjs.get(id) as { name: string; missingFile: boolean };
    return { name, embedded: missingFile === false };
  });
  const [, , width, height] = page.view;
  const read = {
    ...{ pages: pdf.numPages, width: width!, height: height!, fonts },
    text: content.items.map((item) => ('str' in item ? item.str : '')).join(' '),
    paths: count(OPS.constructPath),
    pictures: count(OPS.paintImageXObject, OPS.paintInlineImageXObject, OPS.paintImageMaskXObject),
    about: (await pdf.getMetadata()).info as Record<string, string>,
  };
  await pdf.destroy();
  return read;
}

/** Size of a PNG and how many colours it has, by pngjs. */
export function readPng(bytes: Uint8Array) {
  const { width, height, data } = PNG.sync.read(Buffer.from(bytes));
  const colours = new Set<number>();
  for (let at = 0; at < data.length; at += 4) colours.add(data.readUInt32BE(at));
  return { width, height, colours: colours.size };
}

/** Elements of an SVG by name, read by a strict XML parser that throws where it is not well-formed. */
export function readSvg(text: string): Map<string, number> {
  const counts = new Map<string, number>();
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name }) => {
    counts.set(name, (counts.get(name) ?? 0) + 1);
  });
  parser.write(text).close();
  return counts;
}
