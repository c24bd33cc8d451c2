/** Caps on what is opened at all; a laboratory's table lies far below every one of them. */
export const MAX_FILE_BYTES = 50 * 1024 * 1024;
export const MAX_COLUMNS = 1_000;
export const MAX_ROWS = 250_000;
export const MAX_CELL_CHARACTERS = 32_767;
export const MAX_ROW_CHARACTERS = 1_000_000;

/** A workbook is a ZIP archive: entries, bytes once unpacked, and how far an entry may shrink. */
export const MAX_ZIP_ENTRIES = 1_000;
export const MAX_UNPACKED_BYTES = 200 * 1024 * 1024;
export const MAX_RATIO = 200;
/** Below this size a high ratio is harmless. */
export const RATIO_FROM_BYTES = 10 * 1024 * 1024;

/** Rows kept at hand to understand a table. */
export const HEAD_ROWS = 400;
export const TAIL_ROWS = 40;
export const CHUNK_ROWS = 500;

/** Beyond these lengths a text is no heading and no figure; also keeps patterns from running long. */
export const MAX_HEADING_CHARACTERS = 200;
export const MAX_FIGURE_CHARACTERS = 100;

/** Problems listed in all; the rest is only counted. */
export const LISTED_PROBLEMS = 500;
/** Times one kind of problem in one column is listed before it is only counted. */
export const LISTED_PER_PROBLEM = 20;

export const MAX_LABEL_CHARACTERS = 200;
export const MAX_NOTE_CHARACTERS = 4_000;
