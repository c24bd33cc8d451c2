import type { ReferenceModel } from '../reference/types.ts';
import type { RandomStream } from '../statistics/random.ts';
import { drawReferences } from './draw-references.ts';
import { type Judge, judgeOf } from './judge.ts';
import { type Kernel, kernelOf } from './kernel.ts';

/** A model, its values below detection drawn or not, ready to place draws and judge them. */
export interface World {
  readonly model: ReferenceModel;
  readonly kernel: Kernel;
  readonly judges: readonly (Judge | null)[];
}

/**
 * A model ready to place and judge draws of one sample.
 * @example
 * worldOf({ scale: 'log-ratio', settings: { scale: 'log-ratio' }, mean: [0, 0], sd: null, pca: { loadings: [] }, groups: [], members: [] }, 'tile').judges // []
 */
export function worldOf(model: ReferenceModel, id: string): World {
  return {
    model,
    kernel: kernelOf(model, id),
    judges: model.groups.map((group) => judgeOf(group, model, id)),
  };
}

/**
 * Gives one world after another, the references' values below detection drawn anew in each; always the same where there
 * are none. A drawn model that cannot judge what the model itself can is passed over for the model itself.
 * @example
 * const base = { model: { replaced: [] }, judges: [] };
 * worldsOf(base, 'tile', randomStream(1))() === base // true
 */
export function worldsOf(base: World, id: string, random: RandomStream): () => World {
  if (base.model.replaced.length === 0) return () => base;
  // The sampler draws from the start of the seed's stream, the references from far beyond it.
  random.split();
  return () => {
    const model = drawReferences(base.model, random);
    if (model === base.model) return base;
    const world = worldOf(model, id);
    const judged = world.judges.every((judge, g) => (judge === null) === (base.judges[g] === null));
    return judged ? world : base;
  };
}
