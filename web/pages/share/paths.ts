import { studyPath } from '../../paths.ts';

export const sharePath = (study: string) => studyPath(study, '/share');
export const talkPath = (study: string, placement: string) => `${sharePath(study)}/talk/${placement}`;
export const reportPath = (study: string, placement: string) => `${sharePath(study)}/report/${placement}`;
