import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { ComparisonRequest } from '../../api/contract/placement.ts';
import type { EstimateRequest } from '../../api/contract/slip-estimate.ts';
import type { DepthRequest, RecastRequest, UptakeRequest } from '../../api/contract/slip-layer.ts';
import { answer, api } from '../client.ts';
import { underStudy } from './studies.ts';

const slip = api.studies[':study'].slip;

/** Slip and body analyses written as a comparison writes its own. */
export function useSlipSamples(study: string, request: ComparisonRequest | null) {
  const json = request && {
    normalisation: request.normalisation,
    fraction: request.settings.replacement.fraction,
    measured: ['slip' as const, 'body' as const],
  };
  return useQuery({
    queryKey: underStudy(study, 'slip samples', json),
    queryFn: () => answer(slip.samples.$post({ param: { study }, json: json! })),
    enabled: json !== null,
    placeholderData: keepPreviousData,
    staleTime: 60_000,
  });
}

export function useSlipEstimate(study: string, json: EstimateRequest | null) {
  return useQuery({
    queryKey: underStudy(study, 'slip estimate', json),
    queryFn: () => answer(slip.estimate.$post({ param: { study }, json: json! })),
    enabled: json !== null,
    retry: false,
    staleTime: 60_000,
  });
}

export function useRecast(study: string, json: RecastRequest | null) {
  return useQuery({
    queryKey: underStudy(study, 'recast', json),
    queryFn: () => answer(slip.recast.$post({ param: { study }, json: json! })),
    enabled: json !== null,
    retry: false,
    staleTime: 60_000,
  });
}

export function useReadingDepth(study: string, json: DepthRequest | null) {
  return useQuery({
    queryKey: underStudy(study, 'reading depth', json),
    queryFn: () => answer(slip.depth.$post({ param: { study }, json: json! })),
    enabled: json !== null,
    retry: false,
    placeholderData: keepPreviousData,
    staleTime: 60_000,
  });
}

export function useUptake(study: string, json: UptakeRequest | null) {
  return useQuery({
    queryKey: underStudy(study, 'uptake', json),
    queryFn: () => answer(slip.uptake.$post({ param: { study }, json: json! })),
    enabled: json !== null,
    retry: false,
    staleTime: 60_000,
  });
}
