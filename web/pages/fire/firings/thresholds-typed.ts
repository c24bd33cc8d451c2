import { readNumber } from '../../../parts/numbers.ts';

export const MOST = 12;

/** Temperatures from a text such as `600, 750, 800`; null where one is no figure, or there are too many. */
export function thresholdsIn(text: string): number[] | null {
  const parts = text.split(/[;\s]+|,(?=\s|$)|,(?=\d{3})/).filter((part) => part.trim() !== '');
  const read = parts.map(readNumber);
  const fit = read.every((value) => value !== null && value >= -50 && value <= 1800);
  if (!fit || read.length > MOST) return null;
  return [...new Set(read as number[])].sort((a, b) => a - b);
}
