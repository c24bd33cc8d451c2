import { RequirementError } from '../requirement.ts';
import { formulaContent } from './content.ts';
import type { FireEntry, LineEntry, MaterialEntry, RoastEntry } from './entries.ts';
import { type Fire, fireAt } from './fire.ts';
import { materialFromAnalysis, materialFromFormula } from './material.ts';
import { analyseRoast, type RoastResult } from './roast.ts';
import { roastMaterial } from './roast-material.ts';
import { starterShelf } from './shelf.ts';
import type { BatchLine, Material } from './types.ts';

const ROASTED =
  'Lead dust: keep it damp, wear a fitted respirator and gloves, wipe up wet, wash before eating. Sulfur may be left in it: fire outdoors.';

/** Everything a batch can be weighed from, by key: the starter shelf, the user's own materials, roasted charges. */
export interface BenchShelf {
  readonly materials: ReadonlyMap<string, Material>;
  readonly roasts: ReadonlyMap<string, RoastResult>;
  /** Why an entry could not become a material, by its id. */
  readonly faults: Readonly<Record<string, string>>;
}

/**
 * A material from its description as kept. Throws as `materialFromFormula` and `materialFromAnalysis` do.
 * @example
 * const ore = { id: 'o', name: 'ore', source: '', handling: '', hazards: [], pricePerKg: null, onHand: null, making: { kind: 'formula', formula: 'PbS', purity: { low: 0.9, high: 0.9 }, gangue: 'SiO2' } }
 * materialOfEntry(ore).content.moles.Si // 0.00166436
 * materialOfEntry({ ...ore, making: { ...ore.making, formula: 'Pbs' } }) // throws element
 */
export function materialOfEntry({ making, source, ...notes }: MaterialEntry): Material {
  const named = source === '' ? notes : { ...notes, source };
  if (making.kind === 'analysis') return materialFromAnalysis(named, making);
  const { formula, purity, gangue } = making;
  const rest = gangue === null ? null : formulaContent(gangue);
  return materialFromFormula(named, formula, { share: purity, gangue: rest });
}

/**
 * The lines of a batch with their materials. Throws on a key that is not on the shelf.
 * @example
 * const shelf = buildShelf([], [])
 * linesOfEntries([{ material: 'quartz', amount: 10, water: 0 }], shelf)[0].material.name // 'Quartz'
 * linesOfEntries([{ material: 'gold', amount: 10, water: 0 }], shelf) // throws on the shelf
 */
export function linesOfEntries(
  lines: readonly LineEntry[],
  { materials }: Pick<BenchShelf, 'materials'>,
): BatchLine[] {
  return lines.map(({ material: key, amount, water }) => {
    const material = materials.get(key);
    if (!material) throw new RequirementError(`a batch needs materials that are on the shelf; ${key} is not`);
    return { material, amount, water };
  });
}

/**
 * A fire from its settings as kept. Throws as `fireAt` does.
 * @example
 * fireOfEntry({ celsius: 850, atmosphere: 'smoke', sulfurPerLead: null }).forms.Fe // 'FeO'
 */
export function fireOfEntry({ celsius, atmosphere, sulfurPerLead }: FireEntry): Fire {
  return fireAt({ celsius, atmosphere, ...(sulfurPerLead ? { sulfurPerLead } : {}) });
}

/**
 * What a roast as kept made, by mass balance. Throws as `analyseRoast` and `linesOfEntries` do.
 * @example
 * const roast = { id: 'r', name: 'R', charge: [{ material: 'galena', amount: 100, water: 0 }], massOut: 101, weighing: 0.1, celsius: 800, hours: 3, looks: null, sulfur: null }
 * roastOfEntry(roast, buildShelf([], [])).change // 1
 */
export function roastOfEntry(roast: RoastEntry, shelf: Pick<BenchShelf, 'materials'>): RoastResult {
  const { massOut, weighing, celsius, hours, sulfur } = roast;
  const charge = linesOfEntries(roast.charge, shelf);
  return analyseRoast({ charge, massOut, weighing, celsius, hours, ...(sulfur ? { sulfur } : {}) });
}

/**
 * The whole shelf: starter materials, own materials, then roasts in the order in which their charges become known,
 * so that a charge roasted twice follows its first roast. Entries that cannot be are left out, with the reason.
 * @example
 * const roast = { id: 'r', name: 'R', charge: [{ material: 'galena', amount: 100, water: 0 }], massOut: 101, weighing: 0.1, celsius: 800, hours: 3, looks: null, sulfur: null }
 * const again = { ...roast, id: 's', charge: [{ material: 'r', amount: 101, water: 0 }], massOut: 97 }
 * buildShelf([], [again, roast]).materials.size // 27
 * buildShelf([], [again]).faults.s.includes('not on the shelf') // true
 */
export function buildShelf(
  entries: readonly MaterialEntry[],
  roastEntries: readonly RoastEntry[],
): BenchShelf {
  const materials = new Map(starterShelf().map((material) => [material.id, material]));
  const roasts = new Map<string, RoastResult>();
  const faults: Record<string, string> = {};
  for (const entry of entries)
    refusing(entry.id, faults, () => materials.set(entry.id, materialOfEntry(entry)));
  const ready = (roast: RoastEntry) => roast.charge.every((line) => materials.has(line.material));
  let waiting = [...roastEntries];
  for (let next = waiting.filter(ready); next.length > 0; next = waiting.filter(ready)) {
    waiting = waiting.filter((roast) => !next.includes(roast));
    for (const roast of next)
      refusing(roast.id, faults, () => {
        const result = roastOfEntry(roast, { materials });
        roasts.set(roast.id, result);
        materials.set(roast.id, roastMaterial({ id: roast.id, name: roast.name, handling: ROASTED }, result));
      });
  }
  for (const { id } of waiting) faults[id] = 'its charge needs a material that is not on the shelf';
  return { materials, roasts, faults };
}

function refusing(id: string, faults: Record<string, string>, work: () => void): void {
  try {
    work();
  } catch (error) {
    if (!(error instanceof RequirementError)) throw error;
    faults[id] = error.message;
  }
}
