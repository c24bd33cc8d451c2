import { describe, expect, it } from 'vitest';
import { exchanged, requireOxides } from '../../../../web/pages/placement/views/oxides.ts';

describe('oxides of a figure', () => {
  it('change places where one is chosen that another axis shows', () => {
    expect(exchanged(['PbO', 'MnO', 'SiO2'] as const, 0, 'SiO2')).toEqual(['SiO2', 'MnO', 'PbO']);
  });
  it('are otherwise left where they are', () => {
    expect(exchanged(['PbO', 'MnO'] as const, 1, 'CuO')).toEqual(['PbO', 'CuO']);
    expect(exchanged(['PbO', 'MnO'] as const, 1, 'MnO')).toEqual(['PbO', 'MnO']);
  });
  it('must be as many as the figure shows', () => {
    expect(() => requireOxides(['PbO', undefined, undefined], 3)).toThrow(
      'this figure shows 3 oxides; 1 is compared',
    );
  });
});
