import { studyPath } from '../../paths.ts';

export const firePath = (study: string, rest = '') => studyPath(study, `/fire${rest}`);
export const tilePath = (study: string, tile: string) => firePath(study, `/tiles/${tile}`);
export const phoneSheetPath = (study: string, firing: string) => firePath(study, `/sheet/${firing}`);
export const planPath = (study: string, plan: string, rest = '') => firePath(study, `/plans/${plan}${rest}`);
export const firingPath = (study: string, firing: string) => firePath(study, `/firings/${firing}`);
export const comparePath = (study: string, firings: readonly string[]) =>
  firePath(study, `/firings/compare?firings=${firings.join(',')}`);
