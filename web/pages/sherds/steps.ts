import type { NormalisationStep, NormalisedAnalysis } from '../../../api/domain/composition/types.ts';

/** The last step of every oxide is its closure; the steps before it turn what was reported into oxides. */
export function conversionsOf({ steps }: Pick<NormalisedAnalysis, 'steps'>): readonly NormalisationStep[] {
  return steps.filter((step) => !step.what.includes('closed to 100'));
}
