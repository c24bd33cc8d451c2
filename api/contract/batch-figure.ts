import type { z } from 'zod';
import { id } from './common.ts';
import { BATCH_FIGURES, figureSheet, fileOf } from './figure.ts';

export const batchFigureFile = fileOf(BATCH_FIGURES);
export type BatchFigureFile = z.infer<typeof batchFigureFile>;

/** What it is made for, and the replica set beside the batch; those made of it where none is named. */
export const batchFigureWish = figureSheet.extend({ replica: id.optional() });
export type BatchFigureWish = z.infer<typeof batchFigureWish>;
