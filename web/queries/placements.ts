import {
  keepPreviousData,
  type UseQueryResult,
  useMutation,
  useQueries,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import type { FigureFile, FigureWish } from '../../api/contract/figure.ts';
import type { Comparison, ComparisonRequest, NewPlacement } from '../../api/contract/placement.ts';
import { answer, api } from '../client.ts';
import { refusalFrom } from '../problem.ts';
import { underStudy, useRefresh } from './studies.ts';

const comparison = api.studies[':study'].comparison;
const placements = api.studies[':study'].placements;
const onePlacement = placements[':placement'];

/** Compares as asked; the last answer stays while the next is worked out. */
export function useComparison(study: string, json: ComparisonRequest | null) {
  return useQuery({
    queryKey: underStudy(study, 'comparison', json),
    queryFn: () => answer(comparison.$post({ param: { study }, json: json! })),
    enabled: json !== null,
    placeholderData: keepPreviousData,
    staleTime: 60_000,
  });
}

/** As many replicas as one comparison may name. */
const AT_ONCE = 500;

/** Specimens as they enter a comparison, however many; undefined until all are there. */
export function useSamples(study: string, request: ComparisonRequest | null, ids: readonly string[]) {
  const starts = Array.from({ length: Math.ceil(ids.length / AT_ONCE) }, (_, i) => i * AT_ONCE);
  return useQueries({
    queries:
      request === null
        ? []
        : starts.map((from) => {
            const json = { ...request, replicas: ids.slice(from, from + AT_ONCE) };
            return {
              queryKey: underStudy(study, 'comparison', json),
              queryFn: () => answer(comparison.$post({ param: { study }, json })),
              staleTime: 60_000,
            };
          }),
    combine: together,
  });
}

function together(answers: readonly UseQueryResult<Comparison>[]) {
  const all = answers.flatMap(({ data }) => data ?? []);
  const whole = answers.length > 0 && all.length === answers.length;
  return {
    samples: whole ? all.flatMap(({ replicas }) => replicas) : undefined,
    error: answers.find(({ error }) => error)?.error ?? null,
  };
}

export function usePlacements(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'placements'),
    queryFn: () => answer(placements.$get({ param: { study } })),
  });
}

/** Captions, methods and citations of a comparison that is not kept. */
export function useComparisonText(study: string, request: ComparisonRequest) {
  const json = { comparison: request };
  return useQuery({
    queryKey: underStudy(study, 'comparison-text', json),
    queryFn: () => answer(comparison.text.$post({ param: { study }, json })),
    staleTime: 60_000,
  });
}

/** A figure of a comparison that is not kept, as a file. */
export async function comparisonFigure(
  study: string,
  file: FigureFile,
  json: { readonly comparison: ComparisonRequest; readonly look: FigureWish },
): Promise<Blob> {
  const got = await comparison.figures[':file'].$post({ param: { study, file }, json });
  if (!got.ok) throw await refusalFrom(got);
  return got.blob();
}

/** A kept placement never changes but for its name and note. */
export function usePlacement(study: string, placement: string) {
  return useQuery({
    queryKey: underStudy(study, 'placement', placement),
    queryFn: () => answer(onePlacement.$get({ param: { study, placement } })),
    staleTime: Number.POSITIVE_INFINITY,
  });
}

export function useKeepPlacement(study: string) {
  return useMutation({
    mutationFn: (json: NewPlacement) => answer(placements.$post({ param: { study }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useRenamePlacement(study: string, placement: string) {
  return useMutation({
    mutationFn: (json: { name: string; note: string }) =>
      answer(onePlacement.$patch({ param: { study, placement }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeletePlacement(study: string) {
  const queries = useQueryClient();
  const refresh = useRefresh(study);
  return useMutation({
    mutationFn: (placement: string) => answer(onePlacement.$delete({ param: { study, placement } })),
    onSuccess: (_, placement) => {
      queries.removeQueries({ queryKey: underStudy(study, 'placement', placement) });
      return refresh();
    },
  });
}
