import type { FiredAnswer, Firing } from '../contract/batch.ts';
import type { TargetAnswer, TargetProblem } from '../contract/target.ts';
import { adviseBatch } from '../domain/batch/advice.ts';
import { fireBatch } from '../domain/batch/batch.ts';
import { fireOfEntry, linesOfEntries } from '../domain/batch/bench-shelf.ts';
import { missingMaterials } from '../domain/batch/missing-material.ts';
import { nearestBatch, type RecipeSolution } from '../domain/batch/nearest-batch.ts';
import type { RecipeProblem } from '../domain/batch/recipe-model.ts';
import { unityFormula } from '../domain/batch/unity.ts';
import type { Caller } from './access.ts';
import { readShelf } from './bench-shelf.ts';
import { attempt } from './failure.ts';
import { safetyFor } from './safety.ts';

/** What a batch becomes in a fire, without keeping it. */
export async function fireOnBench(caller: Caller, studyId: string, wish: Firing): Promise<FiredAnswer> {
  const shelf = await readShelf(caller, studyId);
  const fire = fireOfEntry(wish.fire);
  const fired = fireBatch(linesOfEntries(wish.lines, shelf), fire, wish.balance);
  const percent = Object.fromEntries(fired.oxides.map((one) => [one.oxide, one.percent]));
  const unity = attempt(() => unityFormula(percent));
  const answer = {
    fired,
    unity: 'value' in unity ? unity.value : null,
    advice: adviseBatch(fired, fire),
    safety: safetyFor(fired.hazards),
  };
  return answer as FiredAnswer;
}

/** The batches nearest to a target, and what would bring them nearer. */
export async function solveTarget(
  caller: Caller,
  studyId: string,
  wish: TargetProblem,
): Promise<TargetAnswer> {
  const shelf = await readShelf(caller, studyId);
  const keys = [...new Set(wish.materials)];
  const chosen = linesOfEntries(
    keys.map((material) => ({ material, amount: 1, water: 0 })),
    shelf,
  ).map((line) => line.material);
  const problem = {
    target: wish.target,
    materials: chosen,
    fire: fireOfEntry(wish.fire),
    bounds: wish.bounds,
    ...(wish.atMost === null ? {} : { atMost: wish.atMost }),
  } as RecipeProblem;
  const near = nearestBatch(problem);
  const answer = {
    byDistance: named(near.byDistance),
    byError: named(near.byError),
    warnings: near.warnings,
    missing: missingMaterials(problem, [...shelf.materials.values()]),
    safety: safetyFor(near.byDistance.lines.flatMap((line) => line.material.hazards)),
  };
  return answer as TargetAnswer;
}

const named = ({ lines, ...rest }: RecipeSolution) => ({
  ...rest,
  lines: lines.map(({ material, amount }) => ({ material: material.id, name: material.name, amount })),
});
