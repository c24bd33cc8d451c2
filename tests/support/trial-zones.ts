import type { Factor, Grade, Level, Zone } from '../../api/domain/trials/types.ts';

/** An invented zone; `T1`, `A1` and so on. */
export function trialZone(
  tile: string,
  settings: Readonly<Record<string, Level | null>>,
  outcome: { grade?: Grade | null; share?: number; firing?: string | null; label?: string } = {},
): Zone {
  const { grade = null, share = null, firing = 'F1', label = 'A1' } = outcome;
  return {
    id: `${tile}-${label}-${Object.values(settings).join('-')}`,
    label,
    tile,
    tileLabel: tile,
    firing,
    factors: settings,
    grade,
    glassyShare: share,
  };
}

export const COATS: Factor = { name: 'coats', kind: 'number', unit: 'coats', step: 1 };
export const ROAST: Factor = { name: 'roast', kind: 'category', base: 'short' };
export const LEAD: Factor = { name: 'lead', kind: 'number', unit: '%', step: 10 };
