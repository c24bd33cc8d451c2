import type { AnalysedRef } from '../../../../api/contract/slip-reading.ts';
import type { SlipSource } from '../../../../api/domain/slip/slip-source.ts';

/** A slip that was chosen, as the service is asked for it. */
export function slipRef(source: SlipSource, specimen: string): AnalysedRef {
  if (source.kind === 'group') return { kind: 'group', group: source.group, measured: 'slip' };
  return {
    kind: 'specimen',
    specimen: source.kind === 'own' ? specimen : source.specimen,
    measured: 'slip',
  };
}
