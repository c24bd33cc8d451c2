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
