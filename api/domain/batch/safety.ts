import { HAZARDS, type Hazard } from './types.ts';

/** A plain caution, with where its figures come from; `source` is null for common practice without figures. */
export interface Caution {
  readonly hazard: Hazard;
  readonly text: string;
  readonly source: CautionSource | null;
}

export interface CautionSource {
  readonly title: string;
  /** Day on which the figures here were last looked over (ISO date); rules change after it. */
  readonly checked: string;
}

const CHECKED = '2026-11-25';
const sourced = (hazard: Hazard, text: string, title: string): Caution => ({
  hazard,
  text,
  source: { title, checked: CHECKED },
});
const practice = (hazard: Hazard, text: string): Caution => ({ hazard, text, source: null });

/** Comes first wherever a caution is shown. */
export const FIRST_RULE =
  'Local codes and licensed practice come first: ask the local fire, health and environment authorities before handling lead or roasting ore. These cautions are a reminder, not advice on what is lawful or safe in your place.';

/** Goes with every batch that holds lead. No statement here says that any ware is safe. */
export const NOT_FOR_FOOD =
  'Not for food use. Ware painted with lead is for study and display only: mark it so, or pierce it, so that nobody can use it.';

const LEAD: readonly Caution[] = [
  practice('lead', NOT_FOR_FOOD),
  sourced(
    'lead',
    'Lead dust and fumes poison: at work in the United States the limit in air is 50 µg/m³ over 8 hours, action starts at 30 µg/m³. Grind damp, wear a fitted respirator and separate clothes, wipe wet, never sweep, keep children and pregnant women away.',
    'OSHA 29 CFR 1910.1025',
  ),
  sourced(
    'lead',
    'Have the blood tested by a doctor when working with lead; the reference value for children is 3.5 µg/dL, and no level is known to do no harm.',
    'CDC blood lead reference value',
  ),
  sourced(
    'lead',
    'Decorative ware that could pass for tableware must, in the United States, carry a lasting "not for food use, may poison food" mark or a hole.',
    '21 CFR 109.16',
  ),
];

const SULFUR: readonly Caution[] = [
  sourced(
    'sulfur',
    'Roasting a sulfide gives off sulfur dioxide, which burns eyes and lungs: limits are 2 ppm over a working day (NIOSH) and 5 ppm (OSHA), 5 ppm for 15 minutes (NIOSH), and 100 ppm is dangerous at once. Roast outdoors with the wind behind you, away from people and animals, and stay out of the plume.',
    'NIOSH pocket guide and OSHA limits for sulfur dioxide',
  ),
];

const OTHERS: readonly Caution[] = [
  practice(
    'silica',
    'Fine silica dust scars the lungs for good: weigh and mix damp or under a fitted respirator, wipe up wet.',
  ),
  practice(
    'manganese',
    'Manganese dust and fumes harm the nerves: keep dust down, and stay out of kiln smoke.',
  ),
  practice('caustic', 'Wet ash burns skin and eyes: wear gloves and eye protection.'),
  practice('poison', 'This material holds a poisonous metal: read its safety data sheet before opening it.'),
  practice(
    'fire',
    'An open fire needs leave from the local fire authority, a cleared ring, water at hand, and someone beside it until it is cold.',
  ),
];

const ALL = [...LEAD, ...SULFUR, ...OTHERS];

/**
 * The cautions for a set of hazards, lead first, each once. Figures carry their source and the day they were looked
 * over; `FIRST_RULE` belongs above them. None says that anything is safe.
 * @example
 * cautionsFor(['manganese']).length // 1
 * cautionsFor(['sulfur', 'lead'])[0].hazard // 'lead'
 * cautionsFor([]) // []
 */
export function cautionsFor(hazards: readonly Hazard[]): Caution[] {
  return HAZARDS.filter((hazard) => hazards.includes(hazard)).flatMap((hazard) =>
    ALL.filter((caution) => caution.hazard === hazard),
  );
}
