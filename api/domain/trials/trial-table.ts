import { RequirementError } from '../requirement.ts';
import { settingInWords, type Term, termsOf } from './terms.ts';
import type { Factor, Outcome, TrialRequest, UnitOfChange, Zone } from './types.ts';
import { GRADES } from './types.ts';

export interface TileRows {
  readonly id: string;
  readonly label: string;
  readonly firing: string;
  /** Rows of the table. */
  readonly rows: readonly number[];
}

/** Zones that can be used, as columns. */
export interface TrialTable {
  readonly outcome: Outcome;
  readonly zones: readonly Zone[];
  /** 0 or 1; 0, 1 or 2 for `grade`; 0 … 1 for `share`. */
  readonly scores: readonly number[];
  readonly terms: readonly Term[];
  readonly tiles: readonly TileRows[];
  readonly constants: readonly { readonly factor: string; readonly value: string }[];
  readonly leftOut: readonly { readonly zone: string; readonly tile: string; readonly why: string }[];
}

/** Tiles whose firing nobody noted stand in one block of their own. */
export const NO_FIRING = '(no firing noted)';

const SCORES: Record<Outcome, (zone: Zone) => number | null> = {
  glossy: ({ grade }) => (grade === null ? null : grade === 'glossy' ? 1 : 0),
  'satin-or-better': ({ grade }) => (grade === null ? null : grade === 'matt' ? 0 : 1),
  grade: ({ grade }) => (grade === null ? null : GRADES.indexOf(grade)),
  share: ({ glassyShare }) => glassyShare,
};

/**
 * Turns zones into columns: an outcome, and one term for each contrast of each factor that varies, with the unit it
 * varies between. Zones without outcome or without a factor's setting are left out and named. Throws when nothing is
 * left, or when a factor is asked for twice.
 *
 * @example
 * const zone = (id, coats, grade) => ({ id, label: id, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const table = trialTable([zone('a', 1, 'matt'), zone('b', 3, 'glossy'), zone('c', 2, null)], { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 2 }], outcome: 'glossy', seed: 1 })
 * table.terms[0] // { contrast: 'per 2 coats', unitOfChange: 'zone', values: [0.5, 1.5] }
 * table.leftOut // [{ zone: 'T1 c', tile: 'T1', why: 'no gloss grade noted yet' }]
 */
export function trialTable(all: readonly Zone[], { factors, outcome }: TrialRequest): TrialTable {
  checkFactors(factors);
  const judged = all.map((zone) => ({ zone, why: whyNot(zone, factors, outcome) }));
  const zones = judged.filter(({ why }) => why === null).map(({ zone }) => zone);
  if (zones.length === 0)
    throw new RequirementError(
      `an analysis needs zones with an outcome and all ${factors.length} factors noted; found none of ${all.length}`,
    );
  const tiles = tilesOf(zones);
  const varying = factors.map((factor) => ({ factor, unit: unitOfChange(factor, zones, tiles) }));
  return {
    outcome,
    zones,
    scores: zones.map((zone) => SCORES[outcome](zone)!),
    tiles,
    terms: varying.flatMap(({ factor, unit }) => (unit === null ? [] : termsOf(factor, zones, unit))),
    constants: varying
      .filter(({ unit }) => unit === null)
      .map(({ factor }) => ({ factor: factor.name, value: settingInWords(factor, zones[0]!) })),
    leftOut: judged.flatMap(({ zone, why }) =>
      why === null ? [] : [{ zone: `${zone.tileLabel} ${zone.label}`, tile: zone.tileLabel, why }],
    ),
  };
}

function checkFactors(factors: readonly Factor[]): void {
  if (factors.length === 0) throw new RequirementError('an analysis needs at least one factor; found none');
  const names = factors.map((f) => f.name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined)
    throw new RequirementError(`an analysis needs each factor once; found ${twice} twice`);
  const flat = factors.find((f) => f.kind === 'number' && !(f.step > 0 && Number.isFinite(f.step)));
  if (flat) throw new RequirementError(`a factor in numbers needs a step above 0; ${flat.name} has none`);
}

function whyNot(zone: Zone, factors: readonly Factor[], outcome: Outcome): string | null {
  if (SCORES[outcome](zone) === null)
    return outcome === 'share' ? 'no share of glassy area noted yet' : 'no gloss grade noted yet';
  for (const { name, kind } of factors) {
    const value = zone.factors[name] ?? null;
    if (value === null) return `${name} not noted`;
    if (kind === 'number' && !(typeof value === 'number' && Number.isFinite(value)))
      return `${name} is “${value}”, not a number`;
  }
  return null;
}

function tilesOf(zones: readonly Zone[]): TileRows[] {
  return [...new Set(zones.map((z) => z.tile))].map((id) => {
    const rows = zones.flatMap((z, i) => (z.tile === id ? [i] : []));
    const { tileLabel, firing } = zones[rows[0]!]!;
    return { id, label: tileLabel, firing: firing ?? NO_FIRING, rows };
  });
}

/** The smallest unit whose neighbours differ in a factor; null where it never varies. */
function unitOfChange(
  { name }: Factor,
  zones: readonly Zone[],
  tiles: readonly TileRows[],
): UnitOfChange | null {
  const several = (rows: readonly number[]) => new Set(rows.map((i) => zones[i]!.factors[name])).size > 1;
  if (tiles.some((t) => several(t.rows))) return 'zone';
  const together = (firing: string) => tiles.filter((t) => t.firing === firing).flatMap((t) => t.rows);
  if (tiles.some((t) => several(together(t.firing)))) return 'tile';
  return several(zones.map((_, i) => i)) ? 'firing' : null;
}
