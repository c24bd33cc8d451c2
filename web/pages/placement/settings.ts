import type { ComparisonRequest } from '../../../api/contract/placement.ts';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import {
  DEFAULT_NORMALISATION,
  type Measured,
  type NormalisationSettings,
} from '../../../api/domain/composition/types.ts';
import { type CovarianceChoice, DEFAULT_MODEL, type Scale } from '../../../api/domain/reference/types.ts';

export interface LeftOut {
  readonly specimen: string;
  readonly label: string;
  readonly reason: string;
}
/** What the page is set to. Null stands for all there are, also those that come later. */
export interface Settings {
  readonly groups: readonly string[] | null;
  readonly measured: Measured;
  readonly replicas: readonly string[] | null;
  readonly parts: readonly string[] | null;
  readonly scale: Scale;
  readonly covariance: CovarianceChoice;
  readonly fraction: number;
  readonly limits: Readonly<Record<string, number>>;
  readonly normalisation: NormalisationSettings;
  readonly leaveOut: readonly LeftOut[];
}

export const USUAL: Settings = {
  groups: null,
  measured: 'paint',
  replicas: null,
  parts: DEFAULT_MODEL.parts,
  scale: DEFAULT_MODEL.scale,
  covariance: DEFAULT_MODEL.covariance,
  fraction: DEFAULT_MODEL.replacement.fraction,
  limits: DEFAULT_MODEL.replacement.limits,
  normalisation: DEFAULT_NORMALISATION,
  leaveOut: [],
};

/** The settings as the service is asked; null while there is no ware group to ask about. */
export function requestOf(settings: Settings, groups: readonly WareGroup[]): ComparisonRequest | null {
  const there = groups.filter(({ id, specimens }) =>
    settings.groups === null ? specimens > 0 : settings.groups.includes(id),
  );
  if (there.length === 0) return null;
  const { parts, scale, covariance, fraction, limits, measured, replicas, normalisation, leaveOut } =
    settings;
  return {
    settings: {
      groups: there.map(({ id }) => id),
      parts: parts && [...parts],
      scale,
      covariance,
      replacement: { fraction, limits },
    },
    normalisation,
    measured,
    replicas: replicas && [...replicas],
    leaveOut: leaveOut.map(({ specimen, reason }) => ({ specimen, reason })),
    slip: [],
  };
}

/** The settings a kept comparison was made with. */
export function settingsOf(request: ComparisonRequest, labelOf: (specimen: string) => string): Settings {
  const { groups, parts, scale, covariance, replacement } = request.settings;
  const { measured, replicas, normalisation } = request;
  const leaveOut = request.leaveOut.map((one) => ({ ...one, label: labelOf(one.specimen) }));
  return { groups, measured, replicas, parts, scale, covariance, ...replacement, normalisation, leaveOut };
}

export const isUsual = (settings: Settings): boolean => JSON.stringify(settings) === JSON.stringify(USUAL);
export const settingsKey = (study: string): string => `placement.1.${study}`;
