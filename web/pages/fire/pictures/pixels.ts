import type { Pixels } from '../../../../api/domain/colour/types.ts';

/** The pixels of a picture of this service, upright and in sRGB. */
export async function pixelsOf(url: string): Promise<Pixels> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error('the picture must be there to be measured; it could not be fetched.');
  const bitmap = await createImageBitmap(await answer.blob(), { imageOrientation: 'from-image' });
  const { width, height } = bitmap;
  const canvas = new OffscreenCanvas(width, height);
  const brush = canvas.getContext('2d', { colorSpace: 'srgb', willReadFrequently: true });
  if (!brush) throw new Error('the browser must be able to read a picture; it gave no canvas.');
  brush.drawImage(bitmap, 0, 0);
  bitmap.close();
  return { width, height, data: brush.getImageData(0, 0, width, height).data };
}
