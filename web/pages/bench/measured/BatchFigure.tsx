import { type ReactNode, useMemo } from 'react';
import type { Batch } from '../../../../api/contract/batch.ts';
import type { FiredBatch } from '../../../../api/domain/batch/batch.ts';
import { type BatchSides, batchData } from '../../../../api/figures/batch-data.ts';
import { batchHeight, batchPlot } from '../../../../api/figures/batch-plot.ts';
import { batchCaption } from '../../../../api/figures/captions-batch.ts';
import { CaptionedFigure } from '../../../parts/figure/CaptionedFigure.tsx';
import { FileChoices } from '../../../parts/figure/FileChoices.tsx';
import { batchFigureAddress } from '../../../queries/figures.ts';
import { attempt } from '../parts/attempt.ts';

interface BatchFigureProps {
  readonly study: string;
  readonly batch: Batch;
  readonly fired: FiredBatch;
  readonly tile: BatchSides['tiles'][number] & { readonly id: string };
}

export const BATCH_FILES = [{ id: 'fired', label: 'Predicted and fired' }] as const;

/** The batch as predicted and the tile as analysed, oxide by oxide, and the same as a file. */
export function BatchFigure({ study, batch, fired, tile }: BatchFigureProps) {
  const { name, target } = batch;
  const { celsius } = batch.fire;
  const sides = useMemo(
    () => ({ name, celsius, fired, target, tiles: [tile] }),
    [name, celsius, fired, target, tile],
  );
  return (
    <BatchDrawing sides={sides}>
      <FileChoices
        figures={BATCH_FILES}
        from={{
          address: (file, sheet) =>
            batchFigureAddress(study, { batch: batch.id, replica: tile.id }, { file, sheet }),
        }}
      />
    </BatchDrawing>
  );
}

/** A batch beside its tiles and its target, where there is anything to set beside it. */
export function BatchDrawing({
  sides,
  children,
}: {
  readonly sides: BatchSides;
  readonly children: ReactNode;
}) {
  const data = useMemo(() => attempt(() => batchData(sides, { id: 'batch-plot' })).value, [sides]);
  if (data === null) return null;
  return (
    <section className="stack" aria-labelledby="batch-figure">
      <h2 id="batch-figure">In one picture</h2>
      <CaptionedFigure figure={batchPlot} height={batchHeight} data={data} caption={batchCaption(data)} />
      {children}
    </section>
  );
}
