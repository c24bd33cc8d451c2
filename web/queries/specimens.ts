import { keepPreviousData, useMutation, useQuery } from '@tanstack/react-query';
import type { z } from 'zod';
import type { NewSpecimen, SpecimenQuery, specimenBulk } from '../../api/contract/specimen.ts';
import { answer, api } from '../client.ts';
import { underStudy, useRefresh } from './studies.ts';

const specimens = api.studies[':study'].specimens;
const oneSpecimen = specimens[':specimen'];

/** A query as it goes into an address: numbers as text, empty wishes left out. */
export function asQuery(
  wishes: Partial<Record<string, string | number | undefined>>,
): Record<string, string> {
  const entries = Object.entries(wishes).filter(([, value]) => value !== undefined && value !== '');
  return Object.fromEntries(entries.map(([key, value]) => [key, String(value)]));
}

export function useSpecimens(study: string, wishes: Partial<SpecimenQuery>) {
  const query = asQuery(wishes);
  return useQuery({
    queryKey: underStudy(study, 'specimens', query),
    queryFn: () => answer(specimens.$get({ param: { study }, query })),
    placeholderData: keepPreviousData,
  });
}

export function useSpecimen(study: string, specimen: string) {
  return useQuery({
    queryKey: underStudy(study, 'specimen', specimen),
    queryFn: () => answer(oneSpecimen.$get({ param: { study, specimen } })),
  });
}

/** Makes a specimen, or changes one when an id is given. */
export function useSaveSpecimen(study: string, specimen: string | null) {
  return useMutation({
    mutationFn: (json: NewSpecimen) =>
      specimen === null
        ? answer(specimens.$post({ param: { study }, json }))
        : answer(oneSpecimen.$patch({ param: { study, specimen }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteSpecimen(study: string) {
  return useMutation({
    mutationFn: (specimen: string) => answer(oneSpecimen.$delete({ param: { study, specimen } })),
    onSuccess: useRefresh(study),
  });
}

/** Puts many specimens into one group, or gives them another kind. */
export function useChangeSpecimens(study: string) {
  return useMutation({
    mutationFn: (json: z.infer<typeof specimenBulk>) =>
      answer(specimens.change.$post({ param: { study }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteSpecimens(study: string) {
  return useMutation({
    mutationFn: (chosen: string[]) =>
      answer(specimens.delete.$post({ param: { study }, json: { specimens: chosen } })),
    onSuccess: useRefresh(study),
  });
}
