import { z } from 'zod';
import { figureSheet, fileOf } from './figure.ts';
import { slipChoice } from './slip-choice.ts';
import { basis } from './slip-reading.ts';

export const SLIP_FIGURES = ['line'] as const;
export const slipFigureFile = fileOf(SLIP_FIGURES);
export type SlipFigureFile = z.infer<typeof slipFigureFile>;

/** Whose paint, which slip and how much of it; the oxides shown, else those in which paint and slip lie furthest apart. */
export const slipFigureOrder = basis
  .extend({
    choice: slipChoice.pick({ specimen: true, source: true, f: true }),
    oxides: z.array(z.string().max(20)).length(2, 'a mixing line shows two oxides').optional(),
    /** Whether the other replicas of the study are shown. */
    others: z.boolean().default(true),
    sheet: figureSheet.prefault({}),
  })
  .meta({ id: 'SlipFigureOrder' });
export type SlipFigureOrder = z.infer<typeof slipFigureOrder>;
export type SlipFigureWish = z.input<typeof slipFigureOrder>;
