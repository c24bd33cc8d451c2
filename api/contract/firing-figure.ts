import type { z } from 'zod';
import { fileOf } from './figure.ts';

export const FIRING_FIGURES = ['curve'] as const;
export const firingFigureFile = fileOf(FIRING_FIGURES);
export type FiringFigureFile = z.infer<typeof firingFigureFile>;
