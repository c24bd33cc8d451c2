import { useMemo } from 'react';
import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import { type Draft, useDraft } from '../../../parts/useDraft.ts';
import { slipReferencesKey } from './choices.ts';

const NONE: SlipChoice[] = [];

/** Slip drawn off reference sherds before the model is fitted. */
export function useReferenceSlip(study: string): Draft<SlipChoice[]> {
  const { value, set, clear, restored } = useDraft<SlipChoice[]>(slipReferencesKey(study), NONE);
  return useMemo(() => ({ value, set, clear, restored }), [value, set, clear, restored]);
}
