import fc from 'fast-check';

/** Positive parts over ten orders of magnitude, as oxides and traces of one specimen are. */
export const positiveParts = (minLength = 2, maxLength = 12) =>
  fc.array(fc.double({ min: 1e-6, max: 1e4, noNaN: true }), { minLength, maxLength });

/** Two rows of the same parts. */
export const twoCompositions = fc
  .array(fc.tuple(...[0, 1].map(() => fc.double({ min: 1e-6, max: 1e4, noNaN: true }))), {
    minLength: 2,
    maxLength: 12,
  })
  .map((pairs) => [pairs.map(([a]) => a!), pairs.map(([, b]) => b!)] as const);

export const scale = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
