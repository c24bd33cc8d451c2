import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { NewComment, ShareWish } from '../../api/contract/share.ts';
import { answer, api } from '../client.ts';
import { underStudy, useRefresh } from './studies.ts';

const shares = api.studies[':study'].shares;
const shared = api.shared[':token'];

export function useShares(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'shares'),
    queryFn: () => answer(shares.$get({ param: { study } })),
  });
}

export function useMakeShare(study: string) {
  return useMutation({
    mutationFn: (json: ShareWish) => answer(shares.$post({ param: { study }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useRevokeShare(study: string) {
  return useMutation({
    mutationFn: (share: string) => answer(shares[':share'].revocation.$post({ param: { study, share } })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteShare(study: string) {
  return useMutation({
    mutationFn: (share: string) => answer(shares[':share'].$delete({ param: { study, share } })),
    onSuccess: useRefresh(study),
  });
}

export function useShared(token: string) {
  return useQuery({
    queryKey: ['shared', token],
    queryFn: () => answer(shared.$get({ param: { token } })),
    staleTime: 60_000,
  });
}

export function useComment(token: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (json: NewComment) => answer(shared.comments.$post({ param: { token }, json })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['shared', token] }),
  });
}

/** Brings a bundle in as a study of its own. */
export function useTakeBundle() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (file: File) => answer(api.bundles.$post({ form: { file } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['studies'] }),
  });
}

/** Captions, methods and citations of a kept placement. */
export function usePlacementText(study: string, placement: string) {
  const { text } = api.studies[':study'].placements[':placement'];
  return useQuery({
    queryKey: underStudy(study, 'placement', placement, 'text'),
    queryFn: () => answer(text.$get({ param: { study, placement }, query: {} })),
    staleTime: Number.POSITIVE_INFINITY,
  });
}
