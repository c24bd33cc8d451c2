import type { Measured, ReportedValue } from '../../domain/composition/types.ts';
import { type RandomStream, randomStream } from '../../domain/statistics/random.ts';
import type { DemoAnalysis, DemoSpecimen, DemoStudy } from '../demo-types.ts';
import {
  INVENTED,
  type InventedTile,
  type InventedWare,
  LABORATORIES,
  PLACE,
  type Recipe,
  TILES,
  WARES,
} from './recipes.ts';

export const DEMO_SEED = 20_261;
type Laboratory = InventedTile['technique'];

/** The demo study: five invented wares, their slips and some bodies, and nine replica tiles. Same seed, same study. */
export function demoStudy(seed: number = DEMO_SEED): DemoStudy {
  const random = randomStream(seed);
  const sherds = WARES.flatMap((ware) => sherdsOf(ware, random));
  const tiles = TILES.map((tile) => tileOf(tile, random));
  const found = [...sherds, ...tiles];
  return {
    study: {
      name: 'Tessary Vale black paint (demo)',
      place: PLACE,
      notes:
        'Invented data from an invented place, for looking round. The question: why did the paint go glassy only in places?',
    },
    groups: WARES.map(({ name, period, place, notes }) => ({ name, period, place, notes, source: INVENTED })),
    specimens: found.map((each) => each.specimen),
    analyses: found.flatMap((each) => each.analyses),
  };
}

function sherdsOf(ware: InventedWare, random: RandomStream) {
  return Array.from({ length: ware.count }, (_, index) => {
    const label = `${ware.label}-${String(index + 1).padStart(2, '0')}`;
    const specimen: DemoSpecimen = {
      label,
      catalogueNumber: `TV.${ware.label}.${100 + index * 3}`,
      kind: 'sherd',
      group: ware.name,
      notes: '',
    };
    const slip = vary(ware.slip, {}, random, 0.05);
    const share = Math.max(0.02, ware.slipShare[0] + ware.slipShare[1] * random.normal());
    const paint = mixed(vary(ware.paint, ware.spread, random), slip, share);
    const at = (measured: Measured, what: Recipe, spot = '') =>
      analysisOf({ specimen: label, measured, what, spot, laboratory: 'SEM-EDS' }, random);
    const spots = index % 3 === 0 ? ['a', 'b', 'c'] : [''];
    const analyses = spots.map((spot) => at('paint', paint, spot));
    if (index % 2 === 0) analyses.push(at('slip', slip));
    if (index % 4 === 0)
      analyses.push(at('body', vary({ ...ware.slip, CaO: 6.5, Fe2O3: 6.1 }, {}, random, 0.08)));
    return { specimen, analyses };
  });
}

function tileOf(tile: (typeof TILES)[number], random: RandomStream) {
  const specimen: DemoSpecimen = {
    label: tile.label,
    catalogueNumber: '',
    kind: 'replica',
    group: null,
    notes: tile.notes,
  };
  const slip = vary(WARES[0]!.slip, {}, random, 0.03);
  const paint = mixed(vary(tile.paint, {}, random, 0.04), slip, tile.slipShare);
  const laboratory = tile.technique;
  return {
    specimen,
    analyses: [
      ...['1', '2'].map((spot) =>
        analysisOf({ specimen: tile.label, measured: 'paint', what: paint, spot, laboratory }, random),
      ),
      analysisOf({ specimen: tile.label, measured: 'slip', what: slip, spot: '', laboratory }, random),
    ],
  };
}

interface Measurement {
  readonly specimen: string;
  readonly measured: Measured;
  readonly what: Recipe;
  readonly spot: string;
  readonly laboratory: Laboratory;
}

function analysisOf(measurement: Measurement, random: RandomStream): DemoAnalysis {
  const { specimen, measured, what, spot } = measurement;
  const laboratory = LABORATORIES[measurement.laboratory];
  const total = 99.2 + 0.7 * random.normal();
  const reported = Object.entries(what)
    .filter(([oxide]) => !laboratory.blind.includes(oxide))
    .map(([oxide, part]) => report(oxide, (part * total) / 100, measurement.laboratory, random));
  return {
    specimen,
    measured,
    technique: measurement.laboratory,
    laboratory: laboratory.name,
    instrument: laboratory.instrument,
    date: '2026-03-14',
    source: INVENTED,
    spot,
    note: '',
    reported:
      measured === 'slip'
        ? [...reported, ...SLIP_WITHOUT.map((oxide) => below(oxide, measurement))]
        : reported,
  };
}

/** What the paint brings and the slip has too little of to be seen; without these the slip could not be drawn off. */
const SLIP_WITHOUT = ['PbO', 'CuO', 'SO3'];

const below = (analyte: string, { laboratory }: Measurement): ReportedValue => ({
  ...{ analyte, value: null, unit: 'wt%', uncertainty: null, basis: null, resolution: 0.01 },
  ...{ belowDetection: true, limit: limitOf(analyte, laboratory) },
});

const limitOf = (oxide: string, where: Laboratory) => LABORATORIES[where].limits[oxide] ?? 0.05;

function report(oxide: string, wt: number, where: Laboratory, random: RandomStream): ReportedValue {
  const laboratory = LABORATORIES[where];
  const limit = limitOf(oxide, where);
  const relative = laboratory.relativeError;
  const seen = wt * (1 + relative * random.normal()) + 0.15 * limit * random.normal();
  const below = seen < limit;
  const value = Number(seen.toFixed(2));
  return {
    analyte: oxide,
    value: below ? null : value,
    unit: 'wt%',
    uncertainty: below ? null : Number(Math.max(0.01, relative * value, limit / 3).toFixed(2)),
    basis: below ? null : '1σ',
    belowDetection: below,
    limit,
    resolution: 0.01,
  };
}

function vary(recipe: Recipe, spread: Recipe, random: RandomStream, otherwise = 0.1): Recipe {
  const varied = Object.entries(recipe).map(
    ([oxide, part]) => [oxide, part * Math.exp((spread[oxide] ?? otherwise) * random.normal())] as const,
  );
  return percent(Object.fromEntries(varied));
}

function mixed(paint: Recipe, slip: Recipe, share: number): Recipe {
  const [top, below] = [percent(paint), percent(slip)];
  return Object.fromEntries(
    Object.keys(paint).map((oxide) => [oxide, (1 - share) * (top[oxide] ?? 0) + share * (below[oxide] ?? 0)]),
  );
}

function percent(recipe: Recipe): Recipe {
  const sum = Object.values(recipe).reduce((total, part) => total + part, 0);
  return Object.fromEntries(Object.entries(recipe).map(([oxide, part]) => [oxide, (100 * part) / sum]));
}
