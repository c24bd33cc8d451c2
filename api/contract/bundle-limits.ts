const MEGABYTE = 1024 * 1024;

/** Caps on a bundle that is brought in; a study of thousands of sherds lies far below them. */
export const MAX_BUNDLE_BYTES = 50 * MEGABYTE;
export const MAX_BUNDLE_UNPACKED = 200 * MEGABYTE;
export const MAX_BUNDLE_FILES = 100;
