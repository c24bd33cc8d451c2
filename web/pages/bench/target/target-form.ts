import { fireOfEntry } from '../../../../api/domain/batch/bench-shelf.ts';
import type { RecipeProblem } from '../../../../api/domain/batch/recipe-model.ts';
import type { Material } from '../../../../api/domain/batch/types.ts';
import { readNumber } from '../../../parts/numbers.ts';
import { type FireForm, readFire, USUAL_FIRE } from '../parts/fire-form.ts';
import type { Bench } from '../parts/WithShelf.tsx';

export type TargetSource = 'group' | 'sherd' | 'typed';

/** What is aimed at and what may be used, as typed. */
export interface TargetForm {
  readonly source: TargetSource;
  readonly group: string | null;
  readonly sherd: string | null;
  readonly typed: string;
  /** Oxides of the target that are not aimed at. */
  readonly leftOut: readonly string[];
  readonly slip: boolean;
  /** Percent of the reading. */
  readonly share: string;
  readonly slipGroup: string | null;
  readonly materials: readonly string[];
  readonly bounds: Readonly<Record<string, { readonly least: string; readonly most: string }>>;
  readonly atMost: string;
  readonly fire: FireForm;
}

const USUAL_MATERIALS = [
  ...['litharge', 'cerussite', 'quartz', 'kaolinite', 'potash-feldspar', 'soda-feldspar'],
  ...['pyrolusite', 'hematite', 'malachite', 'calcite', 'talc', 'red-clay', 'wood-ash'],
];

export function blankTarget({ materials, roasts, shelf }: Bench): TargetForm {
  const own = [...roasts, ...materials].map((one) => one.id).filter((id) => shelf.materials.has(id));
  return {
    ...{ source: 'group', group: null, sherd: null, typed: '', slip: false, share: '15', slipGroup: null },
    ...{ materials: [...own, ...USUAL_MATERIALS], bounds: {}, atMost: '', fire: USUAL_FIRE },
    leftOut: [],
  };
}

/** A target in wt%, where it comes from, and what became of the slip. */
export interface Aimed {
  readonly name: string;
  readonly parts: Readonly<Record<string, number>>;
  readonly sigma: Readonly<Record<string, number>>;
  readonly remarks: readonly string[];
  /** Every oxide that could be aimed at. */
  readonly offered: readonly string[];
}

export type Means = Omit<RecipeProblem, 'target'>;

/** Materials, bounds, fire and the greatest number of materials; or what is wrong with them. */
export function readMeans(form: TargetForm, { shelf }: Bench): Means | string {
  const materials = form.materials.flatMap((key) => shelf.materials.get(key) ?? []);
  if (materials.length === 0) return 'Choose at least one material.';
  const fire = readFire(form.fire);
  if (typeof fire === 'string') return fire;
  const bounds = readBounds(form, materials);
  if (typeof bounds === 'string') return bounds;
  const atMost = form.atMost.trim() ? readNumber(form.atMost) : null;
  if (form.atMost.trim() && !(atMost !== null && Number.isInteger(atMost) && atMost >= 1))
    return 'The greatest number of materials needs to be a whole number from 1.';
  return { materials, bounds, fire: fireOfEntry(fire), ...(atMost === null ? {} : { atMost }) };
}

type Bounds = Record<string, { least?: number; most?: number }>;

function readBounds({ bounds }: TargetForm, materials: readonly Material[]): Bounds | string {
  const read: Bounds = {};
  for (const { id, name } of materials) {
    const { least = '', most = '' } = bounds[id] ?? {};
    const [low, high] = [least, most].map((text) => (text.trim() ? readNumber(text) : undefined));
    if (low === null || high === null) return `The bounds of ${name} need numbers.`;
    if (low === undefined && high === undefined) continue;
    read[id] = {
      ...(low === undefined ? {} : { least: low }),
      ...(high === undefined ? {} : { most: high }),
    };
  }
  return read;
}
