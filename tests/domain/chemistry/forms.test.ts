import { describe, expect, it } from 'vitest';
import { ELEMENTS } from '../../../api/domain/chemistry/atomic-weights.ts';
import { usualForm } from '../../../api/domain/chemistry/forms.ts';
import { elementOf, oxideFactor } from '../../../api/domain/chemistry/oxides.ts';

describe('usualForm', () => {
  it('is a form of the same element, for every element that has one', () => {
    const formed = ELEMENTS.flatMap((element) =>
      [usualForm(element) ?? []].flat().map((form) => [element, form]),
    );
    expect(formed.length).toBeGreaterThan(60);
    for (const [element, form] of formed) {
      expect(elementOf(form!)).toBe(element);
      expect(oxideFactor(form!)).toBeGreaterThanOrEqual(1);
    }
  });

  it.each(['O', 'C', 'N', 'Ar', 'Au', 'Xx', 'toString'])('has nothing for %s', (element) => {
    expect(usualForm(element)).toBeNull();
  });

  it('knows what ceramic analyses report', () => {
    const forms = ['Al', 'Fe', 'Sb', 'As', 'Cr', 'Bi', 'La', 'Si', 'Ti', 'P', 'Na', 'Cl', 'H'].map(usualForm);
    expect(forms.join(' ')).toBe('Al2O3 Fe2O3 Sb2O3 As2O3 Cr2O3 Bi2O3 La2O3 SiO2 TiO2 P2O5 Na2O Cl H2O');
  });
});
