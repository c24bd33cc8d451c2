import { METHOD_REFERENCES, type MethodReference } from './references.ts';

/**
 * How slip was drawn off a paint, as a paragraph of plain scientific English. `slipReferences` lists what it cites.
 *
 * @example
 * slipMethods({ f: 0.2, version: '1' }).includes('20 %') // true
 * slipMethods({ f: 0, version: '1' }).includes('drawn off by mass') // false
 */
export function slipMethods({ f, version }: { readonly f: number; readonly version: string }): string {
  return [
    'Analyses of paint and slip as reported were converted to oxides with the standard atomic weights of 2021 (Prohaska et al. 2022), closed to 100 wt% and averaged over spots. Values below detection stand at 0.65 of their limit.',
    ...(f > 0
      ? [
          `A share of ${Number((100 * f).toPrecision(3))} % slip was drawn off by mass, (measured − f·slip)/(1 − f), and the errors of paint and slip were carried as independent.`,
        ]
      : []),
    `Computed with Nearsherd ${version}.`,
  ].join(' ');
}

/**
 * What drawing slip off cites.
 *
 * @example
 * slipReferences().map((one) => one.doi) // ['10.1515/pac-2019-0603']
 */
export const slipReferences = (): MethodReference[] => [METHOD_REFERENCES.atomicWeights];
