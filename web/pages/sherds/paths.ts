import { studyPath } from '../../paths.ts';

export const specimenPath = (study: string, specimen: string) => studyPath(study, `/sherds/${specimen}`);
export const analysisPath = (study: string, specimen: string, analysis: string) =>
  `${specimenPath(study, specimen)}/analyses/${analysis}`;
