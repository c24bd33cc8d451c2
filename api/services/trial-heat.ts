import type { FiringRecord } from '../contract/firing.ts';
import { listInWords } from '../domain/placement/words.ts';
import type { Level, Zone } from '../domain/trials/types.ts';

export type FiringHeat = Pick<FiringRecord, 'id' | 'name' | 'fuel' | 'peak' | 'summary'>;
type Noted = Readonly<Record<string, Level>>;

const FUEL = 'fuel';
const PEAK = 'peak temperature';
const ABOVE = /^time above -?\d+(\.\d+)? °C$/;
const above = (threshold: number) => `time above ${threshold} °C`;

export const isOfFire = (name: string): boolean => name === FUEL || name === PEAK || ABOVE.test(name);

export const unitOfHeat = (name: string): string | null =>
  name === PEAK ? '°C' : ABOVE.test(name) ? 'min' : null;

/** What each firing gives to all of its zones; a measure that fewer than two firings have tells nothing and is left out. */
export function heatFactors(firings: readonly FiringHeat[]): ReadonlyMap<string, Noted> {
  const all = firings.map((one) => ({ id: one.id, fuel: fuelOf(one), heat: measured(one) }));
  const names = [...new Set(all.flatMap((one) => Object.keys(one.heat)))];
  const shared = names.filter((name) => all.filter((one) => name in one.heat).length > 1);
  return new Map(
    all.map(({ id, fuel, heat }) => {
      const kept = Object.fromEntries(Object.entries(heat).filter(([name]) => shared.includes(name)));
      return [id, { ...fuel, ...kept }];
    }),
  );
}

const fuelOf = ({ fuel }: FiringHeat): Noted => (fuel === '' ? {} : { [FUEL]: fuel });

/** Peak in whole °C; minutes above each chosen temperature in the channel that was longest above it. */
function measured({ peak, summary }: FiringHeat): Noted {
  const times = (summary?.channels ?? []).flatMap((channel) => channel.timeAbove);
  const heat: Record<string, Level> = peak ? { [PEAK]: Math.round(peak.value) } : {};
  for (const { threshold, seconds } of times) {
    const name = above(threshold);
    heat[name] = Math.max(Number(heat[name] ?? 0), Math.round(seconds.value / 60));
  }
  return heat;
}

/** What to bear in mind of a factor that belongs to the fire: which firings lack it, and what it is mixed with. */
export function heatNotes(name: string, zones: readonly Zone[], firings: readonly FiringHeat[]): string[] {
  if (name === FUEL || !isOfFire(name)) return [];
  const used = firings.filter((one) => zones.some((zone) => zone.firing === one.id));
  const names = (which: readonly FiringHeat[]) => listInWords(which.map((one) => one.name));
  const lacking = used.filter((one) => zones.every((z) => z.firing !== one.id || !(name in z.factors)));
  const byHand = name === PEAK ? used.filter((one) => one.peak?.from === 'reading') : [];
  const what = name === PEAK ? 'log or reading' : 'log';
  return [
    `Each firing has one ${name}, so it cannot be told apart from everything else that differed between the firings.`,
    ...(lacking.length > 0
      ? [`${names(lacking)}: no ${what}, so the ${name} is unknown and its zones are left out.`]
      : []),
    ...(byHand.length > 0
      ? [`${names(byHand)}: the hottest reading by hand, which can miss the true top.`]
      : []),
  ];
}
