import { describe, expect, it } from 'vitest';
import { withFormulas } from '../../../web/parts/formulas.ts';

describe('formulas in a sentence', () => {
  it('have their counts set low', () => {
    expect(withFormulas('unexplained: P2O5, Fe2O3.')).toBe('unexplained: P₂O₅, Fe₂O₃.');
    expect(withFormulas('2PbO·PbSO4 and SO3 1.4')).toBe('2PbO·PbSO₄ and SO₃ 1.4');
  });
  it('are told from labels, amounts and zones', () => {
    const words = 'Zone A1 of K2O3-7, tile SO32, PC1 at 850 °C holds 5 wt% PbO.';
    expect(withFormulas(words)).toBe(words);
  });
});
