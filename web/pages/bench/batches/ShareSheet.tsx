import { useState } from 'react';
import type { Batch } from '../../../../api/contract/batch.ts';
import { Tick } from '../../../parts/Tick.tsx';
import { ShareThis } from '../../share/ShareThis.tsx';

/** Shares a batch as it is weighed out; what was analysed on its tiles only where that is ticked. */
export function ShareSheet({ study, batch }: { readonly study: string; readonly batch: Batch }) {
  const [measured, setMeasured] = useState(false);
  const { note, target, specimens } = batch;
  const held = `the recipe${note ? ' and note' : ''} as the batch holds ${note ? 'them' : 'it'}`;
  const aim = target ? `, its target (${target.name})` : '';
  const tiles = measured ? ', what was analysed on its tiles' : '';
  return (
    <ShareThis
      study={study}
      seen={`The visitor sees ${held}${aim}, what it becomes${tiles} and its cautions, as they are now; not what is on the shelf or what it cost.`}
      wish={(terms) => ({ kind: 'bench', batch: batch.id, measured, ...terms })}
      ticks={
        specimens.length > 0 && (
          <Tick isSelected={measured} onChange={setMeasured}>
            With what was analysed on its tiles
          </Tick>
        )
      }
    />
  );
}
