declare module 'svg-to-pdfkit' {
  export interface Options {
    readonly width?: number;
    readonly height?: number;
    readonly preserveAspectRatio?: string;
    readonly assumePt?: boolean;
    readonly useCSS?: boolean;
    readonly fontCallback?: (family: string, bold: boolean, italic: boolean) => string;
    readonly warningCallback?: (message: string) => void;
  }
  export default function SVGtoPDF(
    document: PDFKit.PDFDocument,
    svg: string,
    x: number,
    y: number,
    options?: Options,
  ): void;
}
