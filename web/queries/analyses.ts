import { keepPreviousData, useMutation, useQuery } from '@tanstack/react-query';
import type { AnalysisQuery, NewAnalysis } from '../../api/contract/analysis.ts';
import type { NormalisationSettings } from '../../api/domain/composition/types.ts';
import { answer, api } from '../client.ts';
import { asQuery } from './specimens.ts';
import { underStudy, useRefresh } from './studies.ts';

const analyses = api.studies[':study'].analyses;
const oneAnalysis = analyses[':analysis'];

export function useAnalyses(study: string, wishes: Partial<AnalysisQuery>) {
  const query = asQuery(wishes);
  return useQuery({
    queryKey: underStudy(study, 'analyses', query),
    queryFn: () => answer(analyses.$get({ param: { study }, query })),
  });
}

export function useAnalysis(study: string, analysis: string) {
  return useQuery({
    queryKey: underStudy(study, 'analysis', analysis),
    queryFn: () => answer(oneAnalysis.$get({ param: { study, analysis } })),
  });
}

/** Makes an analysis, or changes one when an id is given. */
export function useSaveAnalysis(study: string, analysis: string | null) {
  return useMutation({
    mutationFn: (json: NewAnalysis) =>
      analysis === null
        ? answer(analyses.$post({ param: { study }, json }))
        : answer(oneAnalysis.$patch({ param: { study, analysis }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteAnalysis(study: string) {
  return useMutation({
    mutationFn: (analysis: string) => answer(oneAnalysis.$delete({ param: { study, analysis } })),
    onSuccess: useRefresh(study),
  });
}

/** One analysis in oxides, step by step, under the settings chosen. */
export function useNormalisation(study: string, analysis: string, settings: NormalisationSettings) {
  return useQuery({
    queryKey: underStudy(study, 'analysis', analysis, 'normalisation', settings),
    queryFn: () => answer(oneAnalysis.normalisation.$post({ param: { study, analysis }, json: settings })),
    placeholderData: keepPreviousData,
  });
}
