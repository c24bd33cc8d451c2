import { useMemo } from 'react';
import type { ComparisonRequest } from '../../../../api/contract/placement.ts';
import type { WareGroup } from '../../../../api/contract/ware-group.ts';
import type { TargetSpread } from '../../../../api/domain/batch/target-spread.ts';
import {
  DEFAULT_NORMALISATION,
  type Measured,
  type Sample,
} from '../../../../api/domain/composition/types.ts';
import { DEFAULT_MODEL } from '../../../../api/domain/reference/types.ts';
import { readNumber } from '../../../parts/numbers.ts';
import { messageOf } from '../../../problem.ts';
import { useAnalyses } from '../../../queries/analyses.ts';
import { useLookups } from '../../../queries/lookups.ts';
import { useComparison, useSamples } from '../../../queries/placements.ts';
import { useSpecimens } from '../../../queries/specimens.ts';
import { readAnalysis } from '../materials/material-form.ts';
import { attempt } from '../parts/attempt.ts';
import { aimAtGroup, aimAtSherd, aimAtTyped, amountsOf, type SlipTaken, slipOfModel } from './aim.ts';
import type { Aimed, TargetForm } from './target-form.ts';

export interface AimState {
  readonly aimed: Aimed | null;
  readonly spread: TargetSpread | null;
  /** Why there is no target; null while it is on its way or nothing has been chosen. */
  readonly reason: string | null;
  readonly waiting: boolean;
}

const NOTHING: AimState = { aimed: null, spread: null, reason: null, waiting: false };
const WAITING: AimState = { ...NOTHING, waiting: true };
const refused = (reason: string): AimState => ({ ...NOTHING, reason });

function requestFor(group: string, measured: Measured, replicas: string[]): ComparisonRequest {
  const { parts, scale, covariance, replacement } = DEFAULT_MODEL;
  return {
    settings: {
      groups: [group],
      parts: parts && [...parts],
      scale,
      covariance,
      replacement: { ...replacement },
    },
    normalisation: DEFAULT_NORMALISATION,
    ...{ measured, replicas, leaveOut: [], slip: [] },
  };
}

/** The target as chosen: read from the study, slip drawn off, spread and all. */
export function useAim(study: string, form: TargetForm, groups: readonly WareGroup[]): AimState {
  const slip = useSlip(study, form, groups);
  const { samples, error } = useGroupSamples(study, form.source === 'group' ? form.group : null);
  const ofSherd = useSherdAmounts(study, form.source === 'sherd' ? form.sherd : null);
  return useMemo(() => {
    if (slip.state) return slip.state;
    const choices = { slip: slip.taken, leftOut: form.leftOut };
    const make = (work: () => Pick<AimState, 'aimed' | 'spread'>): AimState => {
      const made = attempt(work);
      return made.value ? { ...NOTHING, ...made.value } : refused(made.reason ?? '');
    };
    if (form.source === 'typed') {
      if (!form.typed.trim()) return NOTHING;
      const read = readAnalysis(form.typed);
      if (typeof read === 'string') return refused(read);
      return make(() => ({ aimed: aimAtTyped(read, choices), spread: null }));
    }
    if (form.source === 'sherd') {
      const found = ofSherd(form.sherd);
      return 'aimed' in found
        ? found
        : make(() => ({ aimed: aimAtSherd(found.label, found.amounts(), choices), spread: null }));
    }
    const group = groups.find((one) => one.id === form.group);
    if (!group) return NOTHING;
    if (error) return refused(messageOf(error));
    if (!samples) return WAITING;
    return make(() => aimAtGroup(samples, group, choices));
  }, [form, groups, slip, samples, error, ofSherd]);
}

/** As many rows as one answer may hold. */
const MOST = 5000;
const NO_SAMPLES: readonly Sample[] = [];

function useGroupSamples(study: string, group: string | null) {
  const wishes = { kind: 'sherd' as const, limit: MOST, ...(group ? { group } : {}) };
  const specimens = useSpecimens(study, wishes);
  const ids = group
    ? (specimens.data?.rows ?? []).filter((row) => row.group === group).map((row) => row.id)
    : [];
  const found = useSamples(study, group ? requestFor(group, 'paint', []) : null, ids);
  const none = specimens.isSuccess && !specimens.isPlaceholderData && ids.length === 0;
  return { ...found, samples: none ? NO_SAMPLES : found.samples };
}

function useSherdAmounts(study: string, sherd: string | null) {
  const analyses = useAnalyses(study, {
    measured: 'paint',
    ...(sherd ? { specimen: sherd, limit: MOST } : { limit: 1 }),
  });
  const techniques = useLookups().data?.techniques;
  return useMemo(() => {
    const errors = Object.fromEntries((techniques ?? []).map((one) => [one.code, one.relativeError]));
    return (id: string | null) => {
      if (id === null || id !== sherd) return NOTHING;
      if (analyses.error) return refused(messageOf(analyses.error));
      if (!analyses.data || !techniques) return WAITING;
      const spots = analyses.data.rows.filter((row) => row.specimen === id);
      if (spots.length === 0) return refused('its paint has not been analysed');
      return { label: spots[0]!.specimenLabel, amounts: () => amountsOf(spots, errors) };
    };
  }, [analyses.data, analyses.error, techniques, sherd]);
}

interface SlipState {
  readonly taken: SlipTaken | null;
  /** What stands in the way; null when the slip is ready or none is wanted. */
  readonly state: AimState | null;
}

function useSlip(study: string, form: TargetForm, groups: readonly WareGroup[]): SlipState {
  const chosen = form.slip ? (form.slipGroup ?? form.group) : null;
  const model = useComparison(study, chosen ? requestFor(chosen, 'slip', []) : null);
  const { slip: wanted, share: typed } = form;
  return useMemo(() => {
    if (!wanted) return { taken: null, state: null };
    const share = readNumber(typed);
    if (share === null || share < 0 || share >= 100)
      return { taken: null, state: refused('The share of slip needs a percentage from 0 to below 100.') };
    if (!chosen) return { taken: null, state: refused('Choose whose slip is drawn off.') };
    if (model.error)
      return { taken: null, state: refused(`The slip cannot be read: ${messageOf(model.error)}`) };
    if (!model.data) return { taken: null, state: WAITING };
    const name = `mean of ${groups.find((one) => one.id === chosen)?.name ?? 'the group'}`;
    return { taken: { name, amounts: slipOfModel(model.data.model), share: share / 100 }, state: null };
  }, [wanted, typed, chosen, model.data, model.error, groups]);
}
