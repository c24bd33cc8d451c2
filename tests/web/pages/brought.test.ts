import { expect, test } from 'vitest';
import { whatItBrought } from '../../../web/pages/intake/brought.ts';

test('an import says what it brought, and leaves out what it did not', () => {
  expect(whatItBrought({ analyses: 45, specimens: 45, groups: 4 })).toBe(
    'It brought 45 analyses, 45 new specimens and 4 new ware groups.',
  );
  expect(whatItBrought({ analyses: 3, specimens: 1, groups: 0 })).toBe(
    'It brought 3 analyses and 1 new specimen.',
  );
  expect(whatItBrought({ analyses: 1, specimens: 0, groups: 0 })).toBe('It brought 1 analysis.');
});
