import { describe, expect, it } from 'vitest';
import { measureColour } from '../../api/domain/colour/measure.ts';
import { inventTilePicture } from '../../api/services/demo/tile-picture.ts';
import { DEMO_TILES } from '../../api/services/demo/trial.ts';
import { PICTURED } from '../../api/services/demo-pictures.ts';

/** By eye, no published source: black without a hue to speak of, and browns by their lightness. */
function wordFor([lightness, a, b]: readonly [number, number, number]): string {
  if (Math.hypot(a, b) < 4) return 'black';
  return lightness < 27 ? 'dark brown' : 'brown';
}

describe('the demo’s pictured tiles', () => {
  it.each(PICTURED)('%s has the colours typed that its picture shows', (label) => {
    const tile = DEMO_TILES.find((one) => one.label === label)!;
    const { pixels, outlines, grey } = inventTilePicture(tile);
    const shown = outlines.map((outline) => wordFor(measureColour(pixels, outline, grey).lab));
    expect(tile.colours).toEqual(shown);
    expect(new Set(shown).size).toBeGreaterThan(1);
  });

  it('and all others have one colour a zone', () => {
    for (const { colours, coats } of DEMO_TILES) expect(colours).toHaveLength(coats.length);
  });
});
