import { studyPath } from '../../paths.ts';

export const placementPath = (study: string) => studyPath(study, '/placement');
export const keptPath = (study: string, placement: string) => `${placementPath(study)}/kept/${placement}`;
