import { clrInverse } from '../../../api/domain/composition/log-ratio.ts';
import type { Amount, Sample } from '../../../api/domain/composition/types.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import type { CovarianceChoice, ModelSettings, Scale } from '../../../api/domain/reference/types.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';

export const OXIDES = ['PbO', 'SiO2', 'Al2O3', 'Fe2O3', 'CaO'];
const CENTRES = [
  [60, 28, 3, 5, 4],
  [48, 40, 5, 3, 4],
];

export const stated = (value: number, sigma: number | null): Amount => ({
  value,
  sigma,
  limit: null,
  sigmaBasis: sigma === null ? null : 'stated',
  resolution: null,
});

export function sampleOf(id: string, parts: readonly number[], relative: number | null = null): Sample {
  return {
    id,
    label: id,
    group: null,
    role: 'replica',
    measured: 'paint',
    spots: 1,
    rawTotal: 100,
    amounts: Object.fromEntries(
      OXIDES.map((oxide, j) => [oxide, stated(parts[j]!, relative === null ? null : relative * parts[j]!)]),
    ),
  };
}

/** Two invented groups of 14 and 9 sherds, and the samples they were fitted to. */
export function modelOf({
  scale = 'log-ratio',
  covariance = { kind: 'sample' },
}: {
  scale?: Scale;
  covariance?: CovarianceChoice;
} = {}) {
  const { normal } = randomStream(8);
  const samples = CENTRES.flatMap((centre, g) =>
    Array.from({ length: g === 0 ? 14 : 9 }, (_, i): Sample => {
      const parts = clrInverse(centre.map((wt) => Math.log(wt) + 0.12 * normal()));
      return { ...sampleOf(`${g}-${i}`, parts), group: `g${g}`, role: 'reference' };
    }),
  );
  const settings: ModelSettings = {
    groups: ['g0', 'g1'],
    parts: null,
    scale,
    covariance,
    replacement: { fraction: 0.65, limits: {} },
  };
  return { model: fitReference(samples, settings, { g0: 'Red Terrace', g1: 'Grey Ford' }), samples };
}
