import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../client.ts';

/** The analytes and techniques the service knows; they never change while a page is open. */
export function useLookups() {
  return useQuery({
    queryKey: ['lookups'],
    queryFn: () => answer(api.lookups.$get()),
    staleTime: Number.POSITIVE_INFINITY,
  });
}

/** Whether the service answers, and by which name others reach what is shared. */
export function useHealth() {
  return useQuery({ queryKey: ['health'], queryFn: () => answer(api.health.$get()), staleTime: 60_000 });
}
