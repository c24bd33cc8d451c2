import { fontFaces } from './fonts.ts';

interface Painted {
  readonly width: number;
  readonly height: number;
  /** Of the PNG, px. */
  readonly wide: number;
}

/** Paints the text of an SVG file into a PNG. A picture reaches no font of its page, so the fonts go along in it. */
export async function paintPng(svg: string, { width, height, wide }: Painted): Promise<Blob> {
  const style = `<style>${fontFaces()
    .map(({ css }) => css)
    .join('')}</style>`;
  const picture = new Image();
  picture.src = URL.createObjectURL(
    new Blob([svg.replace(/<svg[^>]*>/, (tag) => tag + style)], { type: 'image/svg+xml' }),
  );
  try {
    await picture.decode();
    const canvas = document.createElement('canvas');
    canvas.width = wide;
    canvas.height = Math.round((wide * height) / width);
    canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height);
    return await asPng(canvas);
  } finally {
    URL.revokeObjectURL(picture.src);
  }
}

function asPng(canvas: HTMLCanvasElement): Promise<Blob> {
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('this browser made no PNG of it.'))));
  });
}
