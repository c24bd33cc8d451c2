/** Colours and sizes of one setting in which a figure is seen. Sizes are in the figure's own px. */
export interface Theme {
  readonly name: 'page-light' | 'page-dark' | 'slide' | 'print';
  readonly background: string;
  readonly ink: string;
  readonly faint: string;
  readonly grid: string;
  readonly accent: string;
  readonly fontFamily: string;
  readonly fontSize: number;
  readonly lineWidth: number;
  readonly markSize: number;
  /** Group colours, safe for colour-blind eyes on this background; used with a mark of the same index. */
  readonly palette: readonly string[];
}

/** Where and how large to draw. The document may be a browser's or a server's. */
export interface At {
  readonly document: Document;
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
}

/**
 * A figure: data in, a detached SVG element out. No window, no fetch, no text measuring;
 * ids are unique and deterministic, so that the same module draws in a page, an export and a snapshot test.
 */
export type Figure<Data> = (data: Data, at: At) => SVGSVGElement;
