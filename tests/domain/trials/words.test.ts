import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyseTrial } from '../../../api/domain/trials/analyse.ts';
import { effectSentence } from '../../../api/domain/trials/effect-words.ts';
import { tilesInWords } from '../../../api/domain/trials/tile-words.ts';
import type { Factor, Grade, Zone } from '../../../api/domain/trials/types.ts';
import { levelInWords, perStep, unitFor } from '../../../api/domain/trials/unit-words.ts';
import { DEMO_TILES, thicknessOf } from '../../../api/services/demo/trial.ts';

const coats: Factor = { name: 'coats', kind: 'number', unit: 'coats', step: 1 };
const roast: Factor = { name: 'lead roast', kind: 'category', base: null };
const zone = (tile: string, set: Zone['factors'], [seat, grade]: [number, Grade]): Zone => ({
  ...{ id: `${tile} ${seat}`, label: `Z${seat}`, tile, tileLabel: tile, firing: 'F1', factors: set, grade },
  glassyShare: null,
});
const demo = DEMO_TILES.flatMap((tile) =>
  tile.coats.map((n, i) =>
    zone(tile.label, { coats: n, thickness: thicknessOf(n, i), ...tile.settings }, [i, tile.grades[i]!]),
  ),
);
/** Everything that an analysis says. */
function said(zones: readonly Zone[], factors: readonly Factor[]): string[] {
  const found = analyseTrial(zones, { factors, outcome: 'glossy', seed: 1 });
  const parts = found.effects.flatMap((e) => [`${e.factor}, ${e.contrast}`, e.sentence, ...e.cautions]);
  const notes = found.models.map((m) => m.note ?? '');
  return [found.sentence, ...parts, ...notes, ...found.tangles.map((t) => t.sentence), ...found.cautions];
}

describe('a step in words', () => {
  it('is of one thing where it is one, and keeps signs as they are', () => {
    expect(['coats', 'hours', 'passes', 'brushes'].map((unit) => perStep(1, unit))).toEqual([
      'per coat',
      'per hour',
      'per pass',
      'per brush',
    ]);
    expect(['µm', '°C', '%', 'wt%'].map((unit) => perStep(10, unit))).toEqual([
      'per 10 µm',
      'per 10 °C',
      'per 10 %',
      'per 10 wt%',
    ]);
    expect(['glass', 'degrees Celsius'].map((unit) => unitFor(1, unit))).toEqual([
      'glass',
      'degrees Celsius',
    ]);
  });

  it('leaves no space at its end and none doubled, whatever the unit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1e4, noNaN: true }),
        fc.constantFrom('', 'coats', 'µm', '%'),
        (step, unit) => {
          const words = perStep(step, unit);
          expect(words).toBe(words.trim());
          expect(words).not.toContain('  ');
          expect(words).toMatch(/^per ./);
        },
      ),
    );
  });

  it('says a setting with its unit once', () => {
    expect(levelInWords({ name: 'lead (wt%)', kind: 'number', unit: 'wt%', step: 1 }, 40)).toBe(
      'lead (wt%) 40',
    );
    expect(levelInWords(coats, 1)).toBe('1 coat');
    expect(levelInWords({ name: 'stirring', kind: 'number', unit: '', step: 1 }, 3)).toBe('stirring 3');
  });
});

describe('tiles in words', () => {
  it('are called tiles once', () => {
    expect(tilesInWords(['Tile 1', 'Tile 2'])).toBe('Tile 1 and Tile 2');
    expect(tilesInWords(['N-1', 'Tile 2'])).toBe('tiles N-1 and Tile 2');
  });
});

describe('what an analysis says', () => {
  const odd =
    /per 1 [a-z]+s\b|\b\dth\b|\btiles? Tile|undefined|null|NaN| {2}|\bby −|\b1 [a-z]+s\b(?! of)|over 1 arr/;
  it.each<[string, Zone[], Factor[]]>([
    ['the demo study', demo, [coats, roast]],
    ['coats beside thickness', demo, [coats, { name: 'thickness', kind: 'number', unit: 'µm', step: 10 }]],
    ['one tile', demo.filter((z) => z.tile === 'Tile 5'), [coats, roast]],
    ['two zones', [zone('T1', { coats: 1 }, [1, 'matt']), zone('T1', { coats: 2 }, [2, 'glossy'])], [coats]],
    ['zones all alike', [1, 2, 3].map((n) => zone('T1', { coats: n }, [n, 'matt'])), [coats]],
    [
      'one setting only',
      [1, 2, 3].map((n) => zone('T1', { coats: 1 }, [n, n > 2 ? 'matt' : 'glossy'])),
      [coats],
    ],
  ])('of %s is written as one would say it', (_, zones, factors) => {
    const sentences = said(zones, factors);
    expect(sentences.length).toBeGreaterThan(1);
    expect(sentences.filter((sentence) => odd.test(sentence))).toEqual([]);
  });

  it('names the part of the limit that several levels leave to each comparison', () => {
    expect(said(demo, [coats, roast]).join('\n')).toContain(
      'each of its 3 comparisons is held to a third of the limit',
    );
  });

  it('calls a hint one where p would do for one comparison but not for several', () => {
    const worded = {
      factor: 'roast',
      contrast: 'raw instead of once',
      level: 0.95,
      p: 0.042,
      arrangements: 1440,
    };
    const sized = {
      scale: 'share',
      estimate: -0.25,
      low: -0.69,
      high: 0.1,
      method: 'exact-permutation',
    } as const;
    const at = { ...worded, ...sized, unitOfChange: 'tile', verdict: 'no sign' } as const;
    const rest = { zones: 54, tiles: 9, adjustedFor: [], cautions: [], separated: false, smallestP: 0.001 };
    const sentence = (p: number) => effectSentence({ ...at, ...rest, p }, 'glossy');
    expect(sentence(0.042)).toMatch(
      /^A hint, no more, that roast, raw instead of once, matters: as estimated, it lowers the share of glossy zones by 25 percentage points \(95 % interval −69 to \+10\)/,
    );
    expect(sentence(0.2)).toMatch(/^No sign that/);
  });
});
