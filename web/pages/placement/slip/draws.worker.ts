import { expose } from 'comlink';
import { drawPlacements } from '../../../../api/domain/uncertainty/draw-placements.ts';
import type { PlacementUncertainty } from '../../../../api/domain/uncertainty/types.ts';
import { type Done, type Said, saying, toTheEnd } from '../../../parts/worker/said.ts';
import type { Asked } from './draws.ts';

const drawing = {
  draw: ({ model, request }: Asked, tell: (done: Done) => void): Said<PlacementUncertainty> =>
    saying(() => toTheEnd(drawPlacements(model, request), tell)),
};
export type DrawWorker = typeof drawing;

expose(drawing);
