import type { Figure, Theme } from './figure.ts';

const SVG = 'http://www.w3.org/2000/svg';

export interface SerialiseAt {
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
  /** The browser's window, or one made without a screen. */
  readonly window: Pick<Window & typeof globalThis, 'document' | 'XMLSerializer'>;
}

/** Characters that no XML document may hold, even escaped; a label pasted from a spreadsheet may. */
const FORBIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to take out
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** The figure as the text of an SVG file. */
export function svgFile<Data>(figure: Figure<Data>, data: Data, at: SerialiseAt): string {
  const { width, height, theme, window } = at;
  const document = window.document.implementation.createDocument(SVG, 'svg', null);
  const drawing = figure(data, { document, width, height, theme });
  const text = new window.XMLSerializer().serializeToString(drawing).replace(FORBIDDEN, '');
  return `<?xml version="1.0" encoding="UTF-8"?>\n${text}\n`;
}
