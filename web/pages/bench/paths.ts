import { studyPath } from '../../paths.ts';

export const benchPath = (study: string, rest = '') => studyPath(study, `/bench${rest}`);
export const batchPath = (study: string, batch: string, rest = '') =>
  benchPath(study, `/batches/${batch}${rest}`);
export const materialPath = (study: string, material: string) => benchPath(study, `/materials/${material}`);
export const roastPath = (study: string, roast: string) => benchPath(study, `/roasts/${roast}`);
