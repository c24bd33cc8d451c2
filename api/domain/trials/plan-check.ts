import { RequirementError } from '../requirement.ts';
import { PLAN_KINDS, type PlannedFactor, type PlanRequest } from './types.ts';

const MOST_TILES = 200;
const MOST_CELLS = 26;

/**
 * Refuses a plan that cannot be laid out, with what was found: counts that are not whole and positive, a factor
 * without two levels, names or levels given twice, too few places or places without a name, generators for factors of two units.
 *
 * @example
 * const coats = { name: 'coats', unit: null, at: 'zone', levels: [1] }
 * checkPlan({ kind: 'full', factors: [coats], tiles: 1, rows: 1, columns: 1, firings: 1, replicates: 1, seed: 1 }) // throws a factor needs two levels or more; coats has 1
 */
export function checkPlan(request: PlanRequest): void {
  if (!PLAN_KINDS.includes(request.kind))
    throw new RequirementError(`a plan needs a kind of ${PLAN_KINDS.join(', ')}; found ${request.kind}`);
  checkCounts(request);
  checkFactors(request.factors);
  const { places, tiles, firings, generators, factors } = request;
  if (places && places.length < tiles / firings)
    throw new RequirementError(
      `each tile of a firing needs a place; found ${places.length} places for ${tiles / firings} tiles`,
    );
  const bare = places?.find((place) => /^\d+$/.test(place));
  if (bare !== undefined)
    throw new RequirementError(
      `a place in the fire needs a name; found ${bare}, as the plan numbers the places that it draws by lot`,
    );
  if (generators && new Set(factors.map((f) => f.at)).size > 1)
    throw new RequirementError(
      'generators need factors that all change on the same unit; found zones, tiles or firings mixed',
    );
}

function checkCounts({ tiles, rows, columns, firings, replicates }: PlanRequest): void {
  const counts = { tiles, rows, columns, firings, replicates };
  for (const [name, count] of Object.entries(counts)) {
    const most = name === 'rows' || name === 'columns' ? MOST_CELLS : MOST_TILES;
    if (!(Number.isInteger(count) && count >= 1 && count <= most))
      throw new RequirementError(`a plan needs 1 to ${most} ${name}, a whole number; found ${count}`);
  }
}

function checkFactors(factors: readonly PlannedFactor[]): void {
  if (factors.length === 0) throw new RequirementError('a plan needs at least one factor; found none');
  const names = factors.map((f) => f.name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) throw new RequirementError(`a plan needs each factor once; found ${twice} twice`);
  for (const { name, levels } of factors) {
    if (levels.length < 2)
      throw new RequirementError(`a factor needs two levels or more; ${name} has ${levels.length}`);
    if (new Set(levels.map(String)).size < levels.length)
      throw new RequirementError(`a factor needs levels that differ; ${name} has one twice`);
  }
}
