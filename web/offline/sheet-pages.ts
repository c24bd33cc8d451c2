/** Addresses of the sheet at the fire: of a firing of a study, and of a link that was handed on. */
const SHEET_PAGES = /^\/(studies\/[^/]+\/fire\/sheet\/[^/]+|shared\/[^/]+\/sheet)\/?$/;

export const isSheetPage = (path: string): boolean => SHEET_PAGES.test(path);
