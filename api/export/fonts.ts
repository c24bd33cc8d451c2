import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const resolve = createRequire(import.meta.url).resolve;
const file = (weight: string) =>
  resolve(`@expo-google-fonts/source-sans-3/${weight}/SourceSans3_${weight}.ttf`);

/** The one family of page, slide and print (SIL Open Font License 1.1), by weight. */
export const FONT_FAMILY = 'Source Sans 3';
export const FONT_FILES = { regular: file('400Regular'), semibold: file('600SemiBold') } as const;
export const fontBytes = (weight: keyof typeof FONT_FILES): Buffer => readFileSync(FONT_FILES[weight]);
