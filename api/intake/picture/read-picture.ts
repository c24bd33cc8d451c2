import { imageSize } from 'image-size';
import { RequirementError } from '../../domain/requirement.ts';
import { foreignName } from '../sniff.ts';
import { bareJpeg } from './jpeg.ts';
import { MOST_MEGAPIXELS } from './limits.ts';
import { barePng } from './png.ts';
import { bareWebp } from './webp.ts';

export interface PictureFile {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp';
  /** Pixels as it is shown, turned upright. */
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

const KINDS = {
  jpg: { type: 'image/jpeg', called: 'a JPEG', endings: /\.(jpe?g|jfif)$/i },
  png: { type: 'image/png', called: 'a PNG', endings: /\.png$/i },
  webp: { type: 'image/webp', called: 'a WebP', endings: /\.webp$/i },
} as const;
type Kind = keyof typeof KINDS;
const PICTURE_ENDING = /\.(jpe?g|jfif|png|webp|gif|bmp|tiff?|heic|heif|avif|svg)$/i;

/**
 * What a picture is, read from its bytes: its type and size, and the bytes without place, camera, owner or anything else
 * that is not the picture. Throws where it is no JPEG, PNG or WebP, says by its name that it is something else, is cut
 * off or damaged, or has more than 40 megapixels.
 */
export function readPicture(bytes: Uint8Array, name: string): PictureFile {
  const kind = kindOf(bytes);
  const { type, called, endings } = KINDS[kind];
  if (PICTURE_ENDING.test(name) && !endings.test(name))
    throw new RequirementError(`a picture's name needs to say what it is; “${name}” is ${called}`);
  const { width, height, orientation = 1 } = sizeOf(bytes);
  const megapixels = (width * height) / 1e6;
  if (!(megapixels > 0))
    throw new RequirementError(`a picture needs pixels; this one is ${width} by ${height}`);
  if (megapixels > MOST_MEGAPIXELS)
    throw new RequirementError(
      `a picture needs at most ${MOST_MEGAPIXELS} megapixels; this one has ${megapixels.toFixed(1)} (${width} by ${height})`,
    );
  const turned = kind === 'jpg' && orientation >= 5;
  return {
    type,
    ...(turned ? { width: height, height: width } : { width, height }),
    bytes: kind === 'jpg' ? bareJpeg(bytes, orientation) : kind === 'png' ? barePng(bytes) : bareWebp(bytes),
  };
}

const WANTED = 'a picture needs to be a JPEG, a PNG or a WebP';
const STARTS: Readonly<Record<Kind, readonly (number | null)[]>> = {
  jpg: [0xff, 0xd8, 0xff],
  png: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  webp: [0x52, 0x49, 0x46, 0x46, null, null, null, null, 0x57, 0x45, 0x42, 0x50],
};

function kindOf(bytes: Uint8Array): Kind {
  const kind = (Object.keys(STARTS) as Kind[]).find((each) =>
    STARTS[each].every((byte, i) => byte === null || bytes[i] === byte),
  );
  if (kind) return kind;
  if (bytes.length === 0) throw new RequirementError(`${WANTED}; this file is empty`);
  throw new RequirementError(`${WANTED}; this file is ${foreignName(bytes) ?? 'none of them'}`);
}

function sizeOf(bytes: Uint8Array) {
  try {
    return imageSize(bytes);
  } catch {
    throw new RequirementError(
      'a picture needs to say its size at its beginning; this file does not, or breaks off before',
    );
  }
}
