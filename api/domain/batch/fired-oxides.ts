import { byDisplayOrder } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { type Fire, fireContent, type Level, massPerAtom, oxidesOf } from './fire.ts';
import { firedForm, REPORTED_FORMS } from './fired-forms.ts';
import { dryMass } from './line.ts';
import type { BatchLine, Material, Span } from './types.ts';

/** An oxide of the fired batch. `low` and `high` carry what is not known of sulfur, purity and roast. */
export interface FiredOxide extends Span {
  readonly oxide: string;
  /** Grams, in the reported form. */
  readonly grams: number;
  readonly percent: number;
  /** One standard deviation of `percent`, from weighing and from the materials' analyses. */
  readonly sigma: number;
  readonly moles: number;
  readonly molePercent: number;
}

interface Variant {
  readonly fire: Fire;
  readonly level: Level;
  readonly of: (material: Material) => Material['content'];
}

interface Percents {
  readonly grams: Readonly<Record<string, number>>;
  readonly percent: Readonly<Record<string, number>>;
  readonly total: number;
}

function percents(batch: readonly BatchLine[], { fire, level, of }: Variant): Percents {
  const grams: Record<string, number> = {};
  for (const line of batch) {
    const { kept } = fireContent(of(line.material), fire, level);
    for (const [oxide, g] of Object.entries(oxidesOf(kept, REPORTED_FORMS)))
      grams[oxide] = (grams[oxide] ?? 0) + g * dryMass(line);
  }
  const total = Object.values(grams).reduce((sum, g) => sum + g, 0);
  if (!(total > 0))
    throw new RequirementError('a batch needs something that stays after firing; all of it leaves');
  return {
    grams,
    percent: Object.fromEntries(Object.entries(grams).map(([o, g]) => [o, (100 * g) / total])),
    total,
  };
}

/**
 * The oxides of a fired batch in wt% closed to 100 (`REPORTED_FORMS`), grams and mole %, each with its range over
 * what is not known of sulfur, purity and roast, and its standard deviation from weighing (`balance`, g) and
 * analyses. Throws when nothing stays behind.
 * @example
 * firedOxides([{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 10 }], fireAt({ celsius: 850 }), 0.01)[0].percent // 88.8464
 */
export function firedOxides(batch: readonly BatchLine[], fire: Fire, balance: number): FiredOxide[] {
  const central = percents(batch, { fire, level: 'central', of: (m) => m.content });
  const ends = (['low', 'high'] as const).flatMap((level) =>
    (['low', 'high'] as const).map((end) =>
      percents(batch, { fire, level, of: (m) => m.spread?.[end] ?? m.content }),
    ),
  );
  const perOxide = (oxide: string) => central.grams[oxide]! / massPerAtom(oxide) / atomsIn(oxide);
  const names = [...new Set([central, ...ends].flatMap((v) => Object.keys(v.grams)))].sort(byDisplayOrder);
  const moles = names.map((oxide) => (central.grams[oxide] ? perOxide(oxide) : 0));
  const causes = causesOf(batch, fire, balance);
  const allMoles = moles.reduce((sum, n) => sum + n, 0);
  return names.map((oxide, i) => {
    const seen = [central, ...ends].map((v) => v.percent[oxide] ?? 0);
    return {
      oxide,
      grams: central.grams[oxide] ?? 0,
      percent: seen[0]!,
      low: Math.min(...seen),
      high: Math.max(...seen),
      sigma: sigmaOf(oxide, central, causes),
      moles: moles[i]!,
      molePercent: (100 * moles[i]!) / allMoles,
    };
  });
}

const atomsIn = (oxide: string) => Number(/^[A-Z][a-z]?(\d*)/.exec(oxide)?.[1] || 1);

interface Moved {
  /** How far one standard deviation of one cause moves each oxide, grams; other oxides stay. */
  readonly byOxide: Readonly<Record<string, number>>;
  readonly total: number;
}

/** Causes of spread: each weighing (a whole line moves), each analysed element (one oxide moves). */
function causesOf(batch: readonly BatchLine[], fire: Fire, balance: number): Moved[] {
  return batch.flatMap((line) => {
    const oxides = oxidesOf(fireContent(line.material.content, fire).kept, REPORTED_FORMS);
    const weighing = Object.fromEntries(Object.entries(oxides).map(([o, g]) => [o, g * balance]));
    const analysed = Object.entries(line.material.sigma).map(([element, s]) => {
      const form = firedForm(element, REPORTED_FORMS);
      return { [form]: s * massPerAtom(form) * dryMass(line) };
    });
    return [weighing, ...analysed].map((byOxide) => ({
      byOxide,
      total: Object.values(byOxide).reduce((sum, g) => sum + g, 0),
    }));
  });
}

/** One standard deviation of a closed percentage. */
function sigmaOf(oxide: string, central: Percents, causes: readonly Moved[]): number {
  const share = (central.percent[oxide] ?? 0) / 100;
  const variance = causes.reduce(
    (sum, { byOxide, total }) => sum + ((byOxide[oxide] ?? 0) - share * total) ** 2,
    0,
  );
  return (100 * Math.sqrt(variance)) / central.total;
}
