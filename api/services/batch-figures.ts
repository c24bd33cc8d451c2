import type { BatchFigureFile, BatchFigureWish } from '../contract/batch-figure.ts';
import { BATCH_FIGURES, type FigureForm, type FigureWords } from '../contract/figure.ts';
import { fireBatch } from '../domain/batch/batch.ts';
import { fireOfEntry, linesOfEntries } from '../domain/batch/bench-shelf.ts';
import { DEFAULT_NORMALISATION, type Sample } from '../domain/composition/types.ts';
import { DEFAULT_MODEL } from '../domain/reference/types.ts';
import { batchMethods, batchReferences } from '../domain/report/batch-methods.ts';
import { prepareBatchFigure } from '../export/batch-figures.ts';
import { type DrawnFile, drawPrepared } from '../export/figure-file.ts';
import type { BatchSides } from '../figures/batch-data.ts';
import type { Caller } from './access.ts';
import { readBatch } from './batches.ts';
import { readShelf } from './bench-shelf.ts';
import { captionsOf } from './figure-captions.ts';
import { readMeasured } from './slip-samples.ts';
import { VERSION } from './version.ts';

interface Asked {
  readonly id: string;
  readonly wish: BatchFigureWish;
}

/** A batch beside the tiles made of it, as a file. */
export async function batchFigure(
  caller: Caller,
  studyId: string,
  { id, wish, file }: Asked & { readonly file: BatchFigureFile },
): Promise<DrawnFile> {
  const form = file.split('.')[1] as FigureForm;
  const figure = prepareBatchFigure(await sidesOf(caller, studyId, { id, wish }), wish);
  return drawPrepared(figure, { form, width: wish.width });
}

/** Caption, methods and citations of a batch beside the tiles made of it. */
export async function batchWords(caller: Caller, studyId: string, { id, wish }: Asked): Promise<FigureWords> {
  const sides = await sidesOf(caller, studyId, { id, wish });
  const captions = await captionsOf(BATCH_FIGURES, async () => prepareBatchFigure(sides, wish));
  const references = batchReferences().map(({ text, doi }) => ({ text, doi }));
  return { captions, methods: batchMethods({ tiles: sides.tiles.length, version: VERSION }), references };
}

async function sidesOf(caller: Caller, studyId: string, { id, wish }: Asked): Promise<BatchSides> {
  const batch = await readBatch(caller, studyId, id);
  const shelf = await readShelf(caller, studyId);
  const specimens = wish.replica === undefined ? batch.specimens : [wish.replica];
  return {
    ...{ name: batch.name, celsius: batch.fire.celsius, target: batch.target },
    fired: fireBatch(linesOfEntries(batch.lines, shelf), fireOfEntry(batch.fire)),
    tiles: await paintOf(caller, studyId, specimens),
  };
}

/** The paint of specimens as it was analysed. */
export async function paintOf(
  caller: Caller,
  studyId: string,
  specimens: readonly string[],
): Promise<Pick<Sample, 'label' | 'spots' | 'amounts'>[]> {
  if (specimens.length === 0) return [];
  const { fraction } = DEFAULT_MODEL.replacement;
  const basis = { measured: 'paint' as const, normalisation: DEFAULT_NORMALISATION, fraction };
  const { samples } = await readMeasured(caller, studyId, { ...basis, specimens });
  return samples.map(({ label, spots, amounts }) => ({ label, spots, amounts }));
}
