import fc from 'fast-check';
import { expect, it } from 'vitest';
import { forgetAssumed } from '../../../api/domain/uncertainty/forget-assumed.ts';

const BASES = ['stated', 'assumed', 'spots', null] as const;

it('takes away only errors that were assumed, and nothing else of an amount', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...BASES),
      fc.double({ min: 0.1, max: 90, noNaN: true }),
      (sigmaBasis, value) => {
        const amount = { value, limit: 0.1, sigma: sigmaBasis && 0.5, sigmaBasis, resolution: 0.01 };
        const { PbO } = forgetAssumed({ PbO: amount });
        const bare = { ...amount, sigma: null, sigmaBasis: null };
        expect(PbO).toEqual(sigmaBasis === 'assumed' ? bare : amount);
      },
    ),
  );
});
