import { expose } from 'comlink';
import { RequirementError } from '../../../../api/domain/requirement.ts';
import { drawPlacements } from '../../../../api/domain/uncertainty/draw-placements.ts';
import type { PlacementUncertainty, Progress } from '../../../../api/domain/uncertainty/types.ts';
import type { Asked } from './draws.ts';

export type Told = { readonly value: PlacementUncertainty } | { readonly reason: string };

/** Errors lose their class on the way out of a worker, so a requirement goes as an answer. */
function draw({ model, request }: Asked, tell: (progress: Progress) => void): Told {
  try {
    const steps = drawPlacements(model, request);
    for (;;) {
      const step = steps.next();
      if (step.done) return { value: step.value };
      tell(step.value);
    }
  } catch (error) {
    if (error instanceof RequirementError) return { reason: error.message };
    throw error;
  }
}
const drawing = { draw };
export type DrawWorker = typeof drawing;

expose(drawing);
