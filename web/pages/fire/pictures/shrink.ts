/** Pixels along the longer side beyond which a picture only costs room: zones and colours are read well below. */
const LONGEST = 2400;
const QUALITY = 0.92;

export interface ReadyPicture {
  readonly file: File;
  /** What was done to it, in words; empty where it goes as it is. */
  readonly said: string;
}

/** A picture as it is sent: large ones smaller and upright. One that the browser cannot read goes as it is, for the service to name. */
export async function readyToSend(file: File): Promise<ReadyPicture> {
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (bitmap === null) return { file, said: '' };
  const { width, height } = bitmap;
  const share = LONGEST / Math.max(width, height);
  if (share >= 1) return { file, said: '' };
  const size = [Math.round(width * share), Math.round(height * share)] as const;
  const blob = await painted(bitmap, size);
  const name = `${file.name.replace(/\.[^.]*$/, '')}.jpg`;
  return {
    file: new File([blob], name, { type: 'image/jpeg' }),
    said: `Made smaller before it was sent: ${size.join(' × ')} pixels of ${width} × ${height}. Where it was taken was not sent.`,
  };
}

async function painted(bitmap: ImageBitmap, [width, height]: readonly [number, number]): Promise<Blob> {
  const canvas = new OffscreenCanvas(width, height);
  const brush = canvas.getContext('2d');
  if (!brush) throw new Error('the browser must be able to paint; it gave no canvas.');
  brush.imageSmoothingQuality = 'high';
  brush.fillStyle = '#ffffff';
  brush.fillRect(0, 0, width, height);
  brush.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
}
