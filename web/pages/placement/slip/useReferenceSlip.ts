import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import { type Draft, useDraft } from '../../../parts/useDraft.ts';
import { slipReferencesKey } from './choices.ts';

const NONE: SlipChoice[] = [];

/** Slip drawn off reference sherds before the model is fitted. */
export const useReferenceSlip = (study: string): Draft<SlipChoice[]> =>
  useDraft<SlipChoice[]>(slipReferencesKey(study), NONE);
