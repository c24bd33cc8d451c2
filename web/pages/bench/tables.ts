import type { FiredOxide } from '../../../api/domain/batch/fired-oxides.ts';
import type { NearestBatches } from '../../../api/domain/batch/nearest-batch.ts';
import type { BatchLine, Material } from '../../../api/domain/batch/types.ts';
import type { Cell } from '../../parts/csv.ts';
import { hazardWord, lossAt850, originWords } from './materials/words.ts';

/** A table for a file: plain names and plain numbers, so that a program reads what the page shows. */
export interface FileTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

export function materialsTable(materials: readonly Material[]): FileTable {
  const formula = ({ origin }: Material) => (origin.kind === 'formula' ? origin.formula : null);
  return {
    header: [
      'material',
      'formula',
      'known by',
      'source',
      'loses at 850 °C, at least (wt%)',
      'at most (wt%)',
      'hazards',
      'on hand (g)',
    ],
    rows: materials.map((one) => [
      ...[one.name, formula(one), originWords(one), one.source],
      ...[lossAt850(one).low, lossAt850(one).high],
      one.hazards.map(hazardWord).join('; '),
      one.onHand,
    ]),
  };
}

export function recipeTable(lines: readonly BatchLine[], unit: 'g' | 'parts'): FileTable {
  const dry = lines.map(({ amount, water = 0 }) => amount * (1 - water / 100));
  const total = dry.reduce((sum, each) => sum + each, 0);
  return {
    header: [
      'material',
      unit === 'g' ? 'weighed (g)' : 'parts by mass',
      'water in it (wt%)',
      'share of dry batch (%)',
    ],
    rows: lines.map(({ material, amount, water = 0 }, i) => [
      ...[material.name, amount, water],
      total > 0 ? (100 * dry[i]!) / total : null,
    ]),
  };
}

export function firedTable(oxides: readonly FiredOxide[]): FileTable {
  return {
    header: ['oxide', 'wt%', '± (1σ)', 'at least (wt%)', 'at most (wt%)', 'mole %', 'g'],
    rows: oxides.map((one) => [
      ...[one.oxide, one.percent, one.sigma, one.low, one.high, one.molePercent, one.grams],
    ]),
  };
}

/** The grams of both batches, material by material. */
export function nearestRecipes({ byDistance, byError }: NearestBatches): FileTable {
  const names = new Map(
    [...byDistance.lines, ...byError.lines].map(({ material }) => [material.id, material.name]),
  );
  const grams = (lines: readonly BatchLine[], id: string) =>
    lines.find(({ material }) => material.id === id)?.amount ?? 0;
  return {
    header: ['material', 'by proportions (g in 100 g dry)', 'by weighted error (g in 100 g dry)'],
    rows: [...names].map(([id, name]) => [name, grams(byDistance.lines, id), grams(byError.lines, id)]),
  };
}

export function nearestFired({ byDistance, byError }: NearestBatches): FileTable {
  return {
    header: [
      ...['oxide', 'target (wt%)', '± (1σ)', 'by proportions (wt%)', 'by proportions is'],
      ...['by weighted error (wt%)', 'by weighted error is', 'why not'],
    ],
    rows: byDistance.rows.map((row, i) => {
      const other = byError.rows[i]!;
      return [
        ...[row.oxide, row.target, row.sigma, row.fired, row.judgement, other.fired, other.judgement],
        row.because ?? other.because,
      ];
    }),
  };
}

interface BlendPlace {
  readonly label: string;
  readonly shares: readonly number[];
  readonly lines: readonly BatchLine[];
  /** wt% by oxide; empty where it cannot be fired. */
  readonly fired: Readonly<Record<string, number>>;
}

/** One row a place: shares of its ends, grams of each material, what it fires to. */
export function blendTable(places: readonly BlendPlace[], ends: readonly string[]): FileTable {
  const materials = unique(places.flatMap(({ lines }) => lines.map(({ material }) => material.name)));
  const oxides = unique(places.flatMap(({ fired }) => Object.keys(fired)));
  return {
    header: [
      'place',
      ...ends.map((end) => `${end} (%)`),
      ...materials.map((name) => `${name} (g)`),
      ...oxides.map((oxide) => `${oxide} fired (wt%)`),
    ],
    rows: places.map(({ label, shares, lines, fired }) => [
      label,
      ...ends.map((_, i) => 100 * (shares[i] ?? 0)),
      ...materials.map((name) =>
        lines.filter(({ material }) => material.name === name).reduce((sum, line) => sum + line.amount, 0),
      ),
      ...oxides.map((oxide) => fired[oxide] ?? null),
    ]),
  };
}

const unique = (names: readonly string[]) => [...new Set(names)];
