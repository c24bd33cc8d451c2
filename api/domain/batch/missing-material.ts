import { type NearestBatches, nearestBatch, type RecipeRow } from './nearest-batch.ts';
import type { RecipeProblem } from './recipe-model.ts';
import type { Material } from './types.ts';

/** What one more material from the shelf would do for a recipe. */
export interface Mending {
  readonly id: string;
  readonly name: string;
  /** Aitchison distance without and with it. */
  readonly before: number;
  readonly after: number;
  /** Grams for 100 g of dry batch. */
  readonly amount: number;
  /** Oxides that could not be met before and can with it. */
  readonly mends: readonly string[];
}

/** A distance below this has nothing left to mend. */
const MET = 1e-6;
/** Share of the distance that a material must take away to be worth naming. */
const WORTH = 0.02;

/**
 * Which materials of the shelf, not yet in the recipe, would bring it nearer to its target: each is added in turn
 * and the recipe solved anew by Aitchison distance. Best first; an empty list means that none helps by 2 %,
 * or that nothing is missing.
 * @example
 * const by = (ids) => starterShelf().filter((m) => ids.includes(m.id))
 * const problem = { target: { parts: { PbO: 60, SiO2: 37, MnO: 3 } }, materials: by(['cerussite', 'quartz']), fire: fireAt({ celsius: 850 }) }
 * missingMaterials(problem, by(['pyrolusite', 'calcite'])).map((m) => m.id) // ['pyrolusite']
 */
export function missingMaterials(problem: RecipeProblem, shelf: readonly Material[]): Mending[] {
  const present = nearestBatch(problem);
  if (present.byDistance.distance < MET) return [];
  const used = new Set(problem.materials.map((m) => m.id));
  return shelf
    .filter((material) => !used.has(material.id))
    .map((material) =>
      mending(present, nearestBatch({ ...problem, materials: [...problem.materials, material] }), material),
    )
    .filter(({ before, after }) => before - after > WORTH * before)
    .sort((a, b) => a.after - b.after);
}

function mending(present: NearestBatches, added: NearestBatches, { id, name }: Material): Mending {
  const unmet = (rows: readonly RecipeRow[]) => rows.filter((r) => r.judgement !== 'met').map((r) => r.oxide);
  const still = new Set(unmet(added.byDistance.rows));
  return {
    id,
    name,
    before: present.byDistance.distance,
    after: added.byDistance.distance,
    amount: added.byDistance.lines.find((line) => line.material.id === id)?.amount ?? 0,
    mends: unmet(present.byDistance.rows).filter((oxide) => !still.has(oxide)),
  };
}
