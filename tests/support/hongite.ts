import { readFileSync } from 'node:fs';
import path from 'node:path';

/** 25 specimens × 5 minerals, wt% (Aitchison 1986, Data 1); see tests/fixtures/hongite.citation.md. */
export const HONGITE: readonly (readonly number[])[] = readFileSync(
  path.resolve(import.meta.dirname, '../fixtures/hongite.csv'),
  'utf8',
)
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').slice(1).map(Number));
