export const MOST_PICTURE_BYTES = 15 * 1024 * 1024;
/** Longer sides of fewer pixels are shown by every browser; one of more may not fit a phone's memory. */
export const MOST_MEGAPIXELS = 40;
