import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { NewStudy, StudyChange } from '../../api/contract/study.ts';
import { answer, api } from '../client.ts';

/** Everything read of a study is kept under this key, so that one call refreshes it all. */
export const underStudy = (study: string, ...rest: readonly unknown[]) => ['study', study, ...rest];

/** Reads a study again after something in it changed. */
export function useRefresh(study: string) {
  const queries = useQueryClient();
  return () =>
    Promise.all([
      queries.invalidateQueries({ queryKey: underStudy(study) }),
      queries.invalidateQueries({ queryKey: ['studies'] }),
    ]);
}

export function useStudies() {
  return useQuery({ queryKey: ['studies'], queryFn: () => answer(api.studies.$get()) });
}

export function useStudy(study: string) {
  return useQuery({
    queryKey: underStudy(study),
    queryFn: () => answer(api.studies[':study'].$get({ param: { study } })),
  });
}

export function useCreateStudy() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (json: NewStudy) => answer(api.studies.$post({ json })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['studies'] }),
  });
}

export function useOpenDemo() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: () => answer(api.demo.$post()),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['studies'] }),
  });
}

export function useChangeStudy(study: string) {
  const refresh = useRefresh(study);
  return useMutation({
    mutationFn: (json: StudyChange) => answer(api.studies[':study'].$patch({ param: { study }, json })),
    onSuccess: refresh,
  });
}

export function useDeleteStudy() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (study: string) => answer(api.studies[':study'].$delete({ param: { study } })),
    onSuccess: (_, study) => {
      queries.removeQueries({ queryKey: underStudy(study) });
      return queries.invalidateQueries({ queryKey: ['studies'] });
    },
  });
}
