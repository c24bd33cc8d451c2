import type { FireEntry, LineEntry, MaterialEntry, RoastEntry } from '../../domain/batch/entries.ts';
import { INVENTED } from './recipes.ts';

/**
 * What stood on the invented bench: materials, roasts and the batches of the nine tiles. Nothing here was dug,
 * weighed or roasted; the figures were chosen so that each tile's analysis follows from its batch, near enough.
 * Lines name materials by the ids here or by starter keys; ids become real ones as the study is made.
 */
type Weighed = readonly (readonly [material: string, amount: number])[];

const lines = (weighed: Weighed): LineEntry[] =>
  weighed.map(([material, amount]) => ({ material, amount, water: 0 }));
const analysed = (values: Readonly<Record<string, number>>, lossOnIgnition: number) => ({
  ...{ kind: 'analysis' as const, values, lossOnIgnition, specimen: null },
  sigma: Object.fromEntries(
    Object.entries(values).map(([name, wt]) => [name, Number((0.02 * wt).toPrecision(2))]),
  ),
});
const material = (
  id: string,
  name: string,
  part: Pick<MaterialEntry, 'making'> & Partial<MaterialEntry>,
): MaterialEntry => ({
  ...{ id, name, source: INVENTED, handling: '', hazards: [], pricePerKg: null, onHand: null },
  ...part,
});

export const DEMO_MATERIALS: readonly MaterialEntry[] = [
  material('ridge', 'Ridge galena (invented)', {
    making: { kind: 'formula', formula: 'PbS', purity: { low: 0.86, high: 0.94 }, gangue: 'SiO2' },
    handling: 'Grind damp under a fitted mask. Roast it, outdoors, before it goes into a paint.',
    onHand: 410,
  }),
  material('black-earth', 'Harl black earth (invented)', {
    making: analysed({ MnO2: 68.5, Fe2O3: 11.8, SiO2: 8.9, Al2O3: 3.1, CaO: 1.1, MgO: 0.6, K2O: 0.5 }, 5.2),
    handling: 'Keep the dust down.',
    onHand: 900,
  }),
  material('brown-earth', 'Sarn brown earth (invented)', {
    making: analysed({ MnO2: 16.2, Fe2O3: 57.5, SiO2: 13.1, Al2O3: 4.6, CaO: 0.9, MgO: 0.5, K2O: 0.6 }, 6.4),
    handling: 'Keep the dust down.',
  }),
  material('slip-clay', 'Vale slip clay (invented)', {
    making: analysed(
      {
        ...{ SiO2: 53.8, Al2O3: 20.6, Fe2O3: 8.8, MgO: 1.9, CaO: 1.7 },
        ...{ Na2O: 0.8, K2O: 3.2, TiO2: 0.9, P2O5: 0.14, MnO: 0.08 },
      },
      7.8,
    ),
    onHand: 5000,
  }),
];

export interface DemoRoast extends RoastEntry {
  readonly date: string;
  readonly note: string;
}

export const DEMO_ROASTS: readonly DemoRoast[] = [
  {
    ...{ id: 'roast-1', name: 'Roast 1 (invented)', date: '2026-01-17', charge: lines([['ridge', 250]]) },
    ...{ massOut: 242.4, weighing: 0.2, celsius: 800, hours: 3, sulfur: null },
    looks: { lump: true, glitters: false, powder: 'yellow' },
    note: `${INVENTED} A hard lump with a yellowish powder; its sulfur was not read.`,
  },
  {
    ...{ id: 'roast-2', name: 'Roast 2 (invented)', date: '2026-01-24', charge: lines([['roast-1', 120]]) },
    ...{ massOut: 117.4, weighing: 0.2, celsius: 830, hours: 4, sulfur: { percent: 0.45, sigma: 0.1 } },
    looks: { lump: false, glitters: false, powder: 'yellow' },
    note: `${INVENTED} Roast 1 ground and roasted again in a thin layer.`,
  },
  {
    ...{ id: 'frit-1', name: 'Frit 1 (invented)', date: '2026-02-07' },
    charge: lines([
      ['roast-2', 60],
      ['quartz', 10],
    ]),
    ...{ massOut: 69.9, weighing: 0.3, celsius: 860, hours: 2, looks: null, sulfur: null },
    note: `${INVENTED} Roast 2 melted with quartz, poured into water, ground.`,
  },
];

export interface DemoBatch {
  readonly name: string;
  readonly lines: readonly LineEntry[];
  readonly fire: FireEntry;
  readonly note: string;
  /** Labels of the tiles painted with it. */
  readonly tiles: readonly string[];
}

const FIRE: FireEntry = { celsius: 850, atmosphere: 'air', sulfurPerLead: null };
const batch = (
  name: string,
  weighed: Weighed,
  [tiles, note]: [tiles: string[], note: string],
): DemoBatch => ({
  ...{ name, lines: lines(weighed), fire: FIRE, tiles, note: `${note} ${INVENTED}` },
});
const ROASTED: Weighed = [
  ['roast-1', 53],
  ['slip-clay', 19],
  ['black-earth', 14.2],
  ['quartz', 11.3],
  ['calcite', 1.3],
  ['malachite', 1.2],
];

export const DEMO_BATCHES: readonly DemoBatch[] = [
  batch(
    'Batch A, percentages copied',
    [
      ['ridge', 28],
      ['slip-clay', 23],
      ['black-earth', 16.9],
      ['quartz', 29.1],
      ['calcite', 1.6],
      ['malachite', 1.4],
    ],
    [['Tile 1'], 'A published 28 % of lead, weighed as that many grams of raw ore.'],
  ),
  batch(
    'Batch B, more raw galena',
    [
      ['ridge', 40.5],
      ['slip-clay', 23.4],
      ['black-earth', 17.2],
      ['quartz', 15.9],
      ['calcite', 1.6],
      ['malachite', 1.4],
    ],
    [['Tile 2'], 'More of the raw ore, to no avail.'],
  ),
  batch('Batch C, roasted', ROASTED, [
    ['Tile 3', 'Tile 4', 'Tile 5'],
    'Roasted once. One, two and four coats.',
  ]),
  batch(
    'Batch D, roasted twice',
    [
      ['roast-2', 55.3],
      ['slip-clay', 19.5],
      ['black-earth', 13.9],
      ['quartz', 8.8],
      ['calcite', 1.4],
      ['malachite', 1.2],
    ],
    [['Tile 6'], 'Roasted twice.'],
  ),
  batch(
    'Batch E, half the lead',
    [
      ['roast-2', 38.4],
      ['slip-clay', 24.9],
      ['black-earth', 18.2],
      ['quartz', 15.4],
      ['calcite', 1.7],
      ['malachite', 1.5],
    ],
    [['Tile 7'], 'Lead cut by nearly half.'],
  ),
  batch(
    'Batch F, brown earth',
    [
      ['roast-2', 56.2],
      ['slip-clay', 19.7],
      ['brown-earth', 12],
      ['quartz', 8.6],
      ['calcite', 1.5],
      ['malachite', 1.2],
      ['black-earth', 0.8],
    ],
    [['Tile 8'], 'A different ore: more iron than manganese.'],
  ),
  batch(
    'Batch G, fritted',
    [
      ['frit-1', 64.2],
      ['slip-clay', 18.6],
      ['black-earth', 14],
      ['calcite', 1.4],
      ['malachite', 1.2],
    ],
    [['Tile 9'], 'Fritted with quartz before it was ground.'],
  ),
];
