import { z } from 'zod';
import { figureSheet, fileOf, TRIAL_FIGURES } from './figure.ts';
import { chanceRequest } from './trial.ts';

export const trialFigureFile = fileOf(TRIAL_FIGURES);
export type TrialFigureFile = z.infer<typeof trialFigureFile>;

/** What is analysed, and what its figures are made for. */
export const trialFigureOrder = z
  .object({
    ...chanceRequest.shape,
    /** The factor that a chance is drawn against; the first where none is named. */
    against: chanceRequest.shape.against.optional(),
    sheet: figureSheet.prefault({}),
  })
  .meta({ id: 'TrialFigureOrder' });
export type TrialFigureOrder = z.infer<typeof trialFigureOrder>;
/** An order as it is sent. */
export type TrialFigureWish = z.input<typeof trialFigureOrder>;
