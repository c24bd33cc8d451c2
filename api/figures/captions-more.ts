import type { ReferenceModel } from '../domain/reference/types.ts';
import { basisOf } from './captions.ts';
import { chemical } from './chemical.ts';
import type { ShownGroup, ShownSample } from './chosen-samples.ts';
import type { DistancesData } from './distances-data.ts';
import type { PairData } from './pair-plot.ts';
import type { TernaryData } from './ternary-plot.ts';
import { numeral } from './text.ts';

/** `12 sherds of Red, n = 12, and 3 replicas`. */
function whoIn(groups: readonly ShownGroup[], samples: readonly ShownSample[]): string {
  const sherds = groups.map(({ name, n }) => `${name}, n = ${n}`).join('; ');
  const replicas = samples.filter(({ slot }) => slot === null).length;
  const others = replicas === 0 ? '' : ` and of ${replicas === 1 ? 'one replica' : `${replicas} replicas`}`;
  return `reference sherds (${sherds})${others}`;
}

export function pairCaption({ oxides, groups, samples, axis, ellipses, level }: PairData): string {
  const scale = axis === 'log' ? 'logarithmic' : 'linear';
  return [
    `${chemical(oxides[1])} against ${chemical(oxides[0])} of ${whoIn(groups, samples)}, in wt% of the oxides compared, closed to 100, on ${scale} axes.`,
    ...(ellipses.length > 0
      ? [
          `Ellipses: where ${numeral(100 * level, 0)} % of new members of a group would lie${axis === 'log' ? ', computed on the logarithms' : ''} (Hotelling’s T² for a new observation).`,
        ]
      : []),
  ].join(' ');
}

export function ternaryCaption({ oxides, groups, samples }: TernaryData): string {
  return `${oxides.map(chemical).join(', ')} of ${whoIn(groups, samples)}, closed to 100 % of these three. A mark stands the nearer to a corner the more of its oxide there is.`;
}

const JOINED = { ward: 'Ward’s criterion', average: 'average linkage' } as const;

export function dendrogramCaption(data: DistancesData, model: ReferenceModel, named: boolean): string {
  return [
    `Tree of ${whoIn(data.groups, data.samples)}, joined by ${JOINED[data.linkage]} from their distances (${data.unit}) on ${basisOf(model)}. The further right two branches join, the less alike they are; which of two branches stands above the other says nothing.`,
    ...(named ? [] : ['Specimens are too many to be named at this size.']),
  ].join(' ');
}

export function heatMapCaption(data: DistancesData, model: ReferenceModel): string {
  return `Distances (${data.unit}) between all pairs of ${whoIn(data.groups, data.samples)}, on ${basisOf(model)}; rows and columns in the order of their tree by ${JOINED[data.linkage]}.`;
}
