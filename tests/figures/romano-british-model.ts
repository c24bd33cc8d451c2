import type { Sample } from '../../api/domain/composition/types.ts';
import { placeSample } from '../../api/domain/placement/place.ts';
import { fitReference } from '../../api/domain/reference/fit.ts';
import { DEFAULT_MODEL, type Scale } from '../../api/domain/reference/types.ts';
import { GROUP_OF, GROUPS, IDS, OXIDES, RAW } from '../support/romano-british.ts';

function sample(at: number, change: Partial<Sample> = {}): Sample {
  const row = RAW[at]!;
  const total = row.reduce((sum, value) => sum + value, 0);
  const amount = (value: number) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null });
  return {
    id: IDS[at]!,
    label: IDS[at]!,
    group: GROUP_OF[at]!,
    role: 'reference',
    measured: 'body',
    spots: 1,
    rawTotal: total,
    amounts: Object.fromEntries(OXIDES.map((oxide, j) => [oxide, amount((100 * row[j]!) / total)])),
    ...change,
  };
}

/** The 45 sherds as references, and three of them, given out as replicas, placed among them. */
export function romanoBritish(scale: Scale = 'log-ratio') {
  const replicas = [3, 25, 40].map((at, i) =>
    sample(at, { id: `tile${i}`, label: `Tile ${i + 1}`, group: null, role: 'replica' }),
  );
  const references = RAW.map((_, at) => sample(at));
  const settings = { ...DEFAULT_MODEL, groups: [...GROUPS], scale };
  const model = fitReference([...references, ...replicas], settings, {});
  return { model, placements: replicas.map((replica) => placeSample(model, replica)) };
}
