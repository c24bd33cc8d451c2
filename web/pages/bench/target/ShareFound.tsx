import { useState } from 'react';
import type { NearestBatches } from '../../../../api/domain/batch/nearest-batch.ts';
import { Select } from '../../../parts/Select.tsx';
import { ShareThis } from '../../share/ShareThis.tsx';
import type { FireForm } from '../parts/fire-form.ts';
import { batchOf, howFound, METRICS } from './found-batch.ts';
import type { Aimed } from './target-form.ts';

const WHICH = [
  { id: 'byDistance', label: METRICS.distance.title },
  { id: 'byError', label: METRICS.error.title },
] as const;

/** Shares a found batch with its target and how it was found, without keeping it. */
export function ShareFound(at: {
  readonly study: string;
  readonly near: NearestBatches;
  readonly aimed: Aimed;
  readonly fire: FireForm;
}) {
  const [which, setWhich] = useState<(typeof WHICH)[number]['id']>('byDistance');
  const found = { solution: at.near[which], aimed: at.aimed, fire: at.fire };
  const batch = batchOf(found, `For ${at.aimed.name}`);
  if (batch === null) return null;
  return (
    <ShareThis
      study={at.study}
      seen="The visitor sees the target and what is remarked of it, the batch found for it and how, what it becomes and its cautions, as they are now; not what is on the shelf or what it cost."
      wish={(terms) => ({ kind: 'bench', batch: { ...batch, note: howFound(found) }, ...terms })}
    >
      <Select label="Which batch" choices={WHICH} value={which} onChange={setWhich} />
    </ShareThis>
  );
}
