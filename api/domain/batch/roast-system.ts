import { formulaContent, mixContents } from './content.ts';
import type { Condition, Corner } from './feasible-ranges.ts';
import { type Fire, fireContent } from './fire.ts';
import { dryMass } from './line.ts';
import { ROAST_PHASES, type RoastPhase } from './roast-phases.ts';
import type { BatchLine, Content } from './types.ts';

/** What a charge brings: lead and sulfur in moles, and the rest as it comes out of the fire, grams by oxide. */
export interface ChargePart {
  readonly lead: number;
  readonly sulfur: number;
  readonly inert: number;
  readonly rest: Readonly<Record<string, number>>;
  readonly unreported: number;
}

/**
 * The unknowns of a roast's mass balance: moles of each phase, then for each line whose content is a range how far
 * along the range it lies (0 to 1).
 */
export interface RoastSystem {
  readonly phases: readonly RoastPhase[];
  /** At the low end of every range. */
  readonly base: ChargePart;
  /** What the high end adds, one for each range. */
  readonly moves: readonly ChargePart[];
}

/**
 * The mass-balance system of a charge: its lead must end up in the phases allowed, everything else comes out as its
 * fired oxides.
 * @example
 * roastSystem([{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 239.26 }], fireAt({ celsius: 800 })).base.lead // 1
 */
export function roastSystem(charge: readonly BatchLine[], fire: Fire, phases = ROAST_PHASES): RoastSystem {
  const ends = charge.map((line) => {
    const { content, spread } = line.material;
    const at = (c: Content) => chargePart(c, dryMass(line), fire);
    return { low: at(spread?.low ?? content), high: spread ? at(spread.high) : null };
  });
  return {
    phases,
    base: ends.map((end) => end.low).reduce((a, b) => combine(a, b, 1)),
    moves: ends.filter((end) => end.high).map((end) => combine(end.high!, end.low, -1)),
  };
}

function chargePart(content: Content, grams: number, fire: Fire): ChargePart {
  const { Pb = 0, S = 0, ...others } = content.moles;
  const { oxides, unreported } = fireContent({ ...content, moles: others }, fire);
  const rest = Object.fromEntries(Object.entries(oxides).map(([oxide, g]) => [oxide, g * grams]));
  const solid = Object.values(rest).reduce((sum, g) => sum + g, 0) + unreported * grams;
  return { lead: Pb * grams, sulfur: S * grams, inert: solid, rest, unreported: unreported * grams };
}

function combine(a: ChargePart, b: ChargePart, sign: number): ChargePart {
  const rest = { ...a.rest };
  for (const [oxide, g] of Object.entries(b.rest)) rest[oxide] = (rest[oxide] ?? 0) + sign * g;
  return {
    lead: a.lead + sign * b.lead,
    sulfur: a.sulfur + sign * b.sulfur,
    inert: a.inert + sign * b.inert,
    rest,
    unreported: a.unreported + sign * b.unreported,
  };
}

/** Row of a linear quantity: its coefficient in each phase (per mole), then in each range. */
const rowOf = (s: RoastSystem, ofPhase: (p: RoastPhase) => number, ofMove: (m: ChargePart) => number) => [
  ...s.phases.map(ofPhase),
  ...s.moves.map(ofMove),
];

/**
 * What always holds: all lead in the phases, no more sulfur than came in, each range from 0 to 1.
 * @example
 * balanceConditions(roastSystem([{ material: materialFromFormula({ id: 'l', name: 'litharge' }, 'PbO'), amount: 223.199 }], fireAt({ celsius: 800 }))).length // 2
 */
export function balanceConditions(s: RoastSystem): Condition[] {
  const within = s.moves.map((_, k) => ({
    row: [...s.phases.map(() => 0), ...s.moves.map((__, i) => Number(i === k))],
    low: Number.NEGATIVE_INFINITY,
    high: 1,
  }));
  return [
    {
      row: rowOf(
        s,
        (p) => p.lead,
        (m) => -m.lead,
      ),
      low: s.base.lead,
      high: s.base.lead,
    },
    {
      row: rowOf(
        s,
        (p) => p.sulfur,
        (m) => -m.sulfur,
      ),
      low: Number.NEGATIVE_INFINITY,
      high: s.base.sulfur,
    },
    ...within,
  ];
}

/**
 * Coefficients and constant of the mass that comes out: `row·x + constant` grams.
 * @example
 * massOutRow(roastSystem([{ material: materialFromFormula({ id: 'q', name: 'quartz' }, 'SiO2'), amount: 5 }], fireAt({ celsius: 800 }))).constant // 5
 */
export function massOutRow(s: RoastSystem): { readonly row: readonly number[]; readonly constant: number } {
  return {
    row: rowOf(
      s,
      (p) => p.mass,
      (m) => m.inert,
    ),
    constant: s.base.inert,
  };
}

/**
 * What one gram of the charge at a corner holds, phases and inert oxides together.
 * @example
 * cornerContent(roastSystem([{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 239.26 }], fireAt({ celsius: 800 })), [0, 0, 0, 0, 0, 1]).moles.Pb // 0.00448031
 */
export function cornerContent(s: RoastSystem, corner: Corner): Content {
  const along = corner.slice(s.phases.length);
  const inert = s.moves.reduce((part, move, k) => combine(part, scaled(move, along[k]!), 1), s.base);
  const parts = [
    ...s.phases.map((p, i) => ({ content: formulaContent(p.formula), share: corner[i]! * p.mass })),
    ...Object.entries(inert.rest).map(([oxide, g]) => ({
      content: formulaContent(oxide),
      share: Math.max(0, g),
    })),
    { content: { moles: {}, otherLoss: 0, unreported: 1 }, share: Math.max(0, inert.unreported) },
  ];
  const total = parts.reduce((sum, part) => sum + part.share, 0);
  return mixContents(parts.map(({ content, share }) => ({ content, share: share / total })));
}

function scaled(part: ChargePart, by: number): ChargePart {
  const zero = { lead: 0, sulfur: 0, inert: 0, rest: {}, unreported: 0 };
  return combine(zero, part, by);
}
