import { mixContents } from './content.ts';
import { completeMaterial, type MaterialNotes } from './material.ts';
import type { RoastResult } from './roast.ts';
import type { Material } from './types.ts';

/**
 * A roasted (or fritted) charge as a material for the next batch. Its lead is known; its sulfur keeps the range that
 * the weighing left, as the material's `spread`, with the middle as its content.
 * @example
 * const roasted = analyseRoast({ charge: [{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 100 }], massOut: 105, weighing: 0.1, celsius: 800, hours: 3 })
 * roastMaterial({ id: 'r1', name: 'Roast 1' }, roasted).content.moles.Pb // 0.00398053
 */
export function roastMaterial(notes: MaterialNotes, roast: RoastResult): Material {
  const { low, high } = roast.contents;
  const { celsius, hours } = roast.record;
  return completeMaterial(notes, {
    origin: { kind: 'roast', celsius, hours },
    content: mixContents([
      { content: low, share: 0.5 },
      { content: high, share: 0.5 },
    ]),
    spread: { low, high },
    source: `roast at ${celsius} °C for ${hours} h, by mass balance`,
  });
}
