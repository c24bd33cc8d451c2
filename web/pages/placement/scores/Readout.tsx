import type { ReactNode } from 'react';
import type { ScoresData } from '../../../../api/figures/scores-data.ts';
import { numeral } from '../../../../api/figures/text.ts';
import type { Source } from '../../../parts/figure/source.ts';
import { useSourceValue } from '../../../parts/figure/useSource.ts';
import type { Read } from './walk.ts';

/** The point being read; one that was clicked stays until another is, and shows what can be done with it. */
export interface Reading {
  readonly read: Read;
  readonly components: ScoresData['components'];
  readonly kept: boolean;
}

/** `R-17, Red Terrace ware, 3 of 21 from the left: PC1 1.24, PC2 −0.31`. */
export function inWords({ read, components }: Reading): string {
  const [i, j] = components;
  const set = read.kind === 'replica' ? 'replica' : read.set;
  const place = `${read.place} of ${read.of} from the left`;
  return `${read.label}, ${set}, ${place}: PC${i + 1} ${numeral(read.x, 2)}, PC${j + 1} ${numeral(read.y, 2)}`;
}

/** What the point under the pointer or the keys is, in a line of text that is also read aloud. */
export function Readout(at: {
  readonly source: Source<Reading | null>;
  readonly sherdActions: (id: string, label: string) => ReactNode;
}) {
  const reading = useSourceValue(at.source);
  return (
    <div className="readout">
      <p role="status">
        {reading === null ? <span className="faint">Point at a mark to read it.</span> : inWords(reading)}
      </p>
      {reading?.kept && reading.read.kind === 'reference' && (
        <span className="row">{at.sherdActions(reading.read.id, reading.read.label)}</span>
      )}
    </div>
  );
}
