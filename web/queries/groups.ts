import { useMutation, useQuery } from '@tanstack/react-query';
import type { NewWareGroup, WareGroupChange } from '../../api/contract/ware-group.ts';
import { answer, api } from '../client.ts';
import { underStudy, useRefresh } from './studies.ts';

const groups = api.studies[':study'].groups;
const oneGroup = groups[':group'];

export function useGroups(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'groups'),
    queryFn: () => answer(groups.$get({ param: { study } })),
  });
}

/** Makes a ware group, or changes one when an id is given. */
export function useSaveGroup(study: string, group: string | null) {
  return useMutation({
    mutationFn: (json: NewWareGroup & WareGroupChange) =>
      group === null
        ? answer(groups.$post({ param: { study }, json }))
        : answer(oneGroup.$patch({ param: { study, group }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteGroup(study: string) {
  return useMutation({
    mutationFn: (group: string) => answer(oneGroup.$delete({ param: { study, group } })),
    onSuccess: useRefresh(study),
  });
}
