import { describe, expect, it } from 'vitest';
import { thresholdsIn } from '../../../web/pages/fire/firings/thresholds-typed.ts';

describe('temperatures to stay above, as typed', () => {
  it.each([
    ['600, 700, 800', [600, 700, 800]],
    ['800,700', [700, 800]],
    ['800; 700 700', [700, 800]],
    ['', []],
  ])('“%s” is read', (text, read) => {
    expect(thresholdsIn(text)).toEqual(read);
  });

  it('refuses words, what no fire reaches, and more than twelve', () => {
    expect(thresholdsIn('hot, 800')).toBeNull();
    expect(thresholdsIn('5000')).toBeNull();
    expect(thresholdsIn(Array.from({ length: 13 }, (_, i) => 100 + i).join(', '))).toBeNull();
  });
});
