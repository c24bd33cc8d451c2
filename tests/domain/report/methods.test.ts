import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_NORMALISATION } from '../../../api/domain/composition/types.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import { methodReferences, methodsParagraph } from '../../../api/domain/report/methods.ts';
import { GROUPS } from '../../support/romano-british.ts';
import { amount, POTTERY_NAMES, SHERDS, sampleOf, settingsFor } from '../../support/samples.ts';

const fitted = (changes = {}, samples = SHERDS) =>
  fitReference(samples, settingsFor([...GROUPS], changes), POTTERY_NAMES);
const about = (model = fitted(), changes = {}) => ({
  ...{ model, normalisation: DEFAULT_NORMALISATION, measured: 'body', placed: 2 },
  ...{ replacedPlaced: 0, leftOutByHand: 0, slipDrawnOff: 0, version: '1.2.3', ...changes },
});

describe('a methods paragraph', () => {
  it('names every group with its n, every oxide and the version', () => {
    const text = methodsParagraph(about());
    expect(text).toContain('placed among 45 reference sherds of 3 ware groups');
    expect(text).toContain('kiln1, n = 21; kilns23, n = 14; kilns45, n = 10');
    for (const oxide of fitted().parts) expect(text).toContain(oxide);
    expect(text).toContain('Nearsherd 1.2.3');
  });
  it.each([
    [{ scale: 'log-ratio' }, 'Aitchison distances (Aitchison 1986)'],
    [{ scale: 'log10' }, 'decimal logarithms'],
    [{ scale: 'standardised' }, 'standard deviation 1 over all references'],
    [{ covariance: { kind: 'shrinkage', target: 'oas' } }, 'shrunk after Chen et al. (2010)'],
    [{ covariance: { kind: 'shrinkage', target: 'ledoit-wolf' } }, 'shrunk after Ledoit and Wolf (2004)'],
    [{ covariance: { kind: 'components', count: 3 } }, 'on principal components in p = 3 directions'],
    [{ covariance: { kind: 'sample' } }, 'Hotelling’s T² for a new observation'],
  ])('says what a setting means: %j', (changes, words) => {
    expect(methodsParagraph(about(fitted(changes)))).toContain(words);
  });
  it('says how what components leave out was judged, and only then', () => {
    const on = (count: number) =>
      methodsParagraph(about(fitted({ covariance: { kind: 'components', count } })));
    expect(on(3)).toContain('each member off components fitted without it');
    expect(on(8)).not.toContain('components leave out');
  });
  it('claims no membership test under shrinkage, which has none', () => {
    const model = fitted({ covariance: { kind: 'shrinkage', target: 'oas' } });
    expect(methodsParagraph(about(model))).not.toContain('Hotelling');
    expect(methodReferences(about(model)).map(({ key }) => key)).not.toContain('Hotelling 1931');
  });
  it('counts what was below detection and names the share of the limit put in', () => {
    const [first, ...rest] = SHERDS;
    const low = sampleOf(first!.id, first!.group, { ...first!.amounts, BaO: amount(null, 0.01) });
    const text = methodsParagraph(about(fitted({}, [low, ...rest]), { replacedPlaced: 2 }));
    expect(text).toContain('3 values below detection were replaced by 0.65 of the detection limit');
    expect(methodsParagraph(about())).toContain('No value compared was below detection.');
  });
  it('says which groups are too small for a spread', () => {
    const few = SHERDS.filter(({ group }, i) => group !== GROUPS[2] || i > 42);
    const model = fitted({}, few);
    expect(model.groups[2]!.spread).toBeNull();
    expect(methodsParagraph(about(model))).toContain('kilns45 (n = 2) allowed no measure of spread');
  });
  it('cites in its words just what it lists', () => {
    const choices = fc.record({
      scale: fc.constantFrom('log-ratio', 'log10', 'standardised'),
      covariance: fc.constantFrom(
        { kind: 'auto' },
        { kind: 'sample' },
        { kind: 'shrinkage', target: 'oas' },
        { kind: 'shrinkage', target: 'ledoit-wolf' },
      ),
    });
    const replaced = fc.integer({ min: 0, max: 3 });
    fc.assert(
      fc.property(choices, replaced, (changes, replacedPlaced) => {
        const one = about(fitted(changes), { replacedPlaced });
        const flat = methodsParagraph(one).replaceAll(/ \((\d{4})\)/g, ' $1');
        const cited = [
          ...new Set(
            [...flat.matchAll(/[\p{L}-]+(?: and \p{L}+| et al\.)? \d{4}(?=[);]|\b)/gu)].map(([key]) => key),
          ),
        ].filter((key) => !/^of /.test(key));
        expect(cited.sort()).toEqual(
          methodReferences(one)
            .map(({ key }) => key)
            .sort(),
        );
      }),
      { numRuns: 24 },
    );
  });
});
