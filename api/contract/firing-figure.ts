import { z } from 'zod';
import { figureSheet, fileOf } from './figure.ts';
import { comparedFirings } from './firing-log.ts';

export const FIRING_FIGURES = ['curve'] as const;
export const firingFigureFile = fileOf(FIRING_FIGURES);
export type FiringFigureFile = z.infer<typeof firingFigureFile>;

export const COMPARED_FIGURES = ['compared'] as const;
export const comparedFigureFile = fileOf(COMPARED_FIGURES);
export type ComparedFigureFile = z.infer<typeof comparedFigureFile>;
/** What it is made for, and which firings, with commas between. */
export const comparedFigureWish = figureSheet.extend({
  firings: z
    .string()
    .max(2_000)
    .transform((text) => text.split(','))
    .pipe(comparedFirings.shape.firings)
    .meta({ description: 'Ids of firings with a log, with commas between' }),
});
export type ComparedFigureWish = z.infer<typeof comparedFigureWish>;
