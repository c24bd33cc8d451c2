import { useCallback } from 'react';
import { useSearchParams } from 'wouter';
import { type SpecimenQuery, specimenQuery } from '../../../api/contract/specimen.ts';

export type SpecimenView = Pick<SpecimenQuery, 'search' | 'kind' | 'group' | 'sort' | 'direction' | 'offset'>;

/** What is searched for and how it is sorted, kept in the address, so that a reload and a link show the same. */
export function useSpecimenView() {
  const [params, setParams] = useSearchParams();
  const read = specimenQuery.safeParse(Object.fromEntries(params));
  const { search, kind, group, sort, direction, offset } = read.success ? read.data : specimenQuery.parse({});
  const view: SpecimenView = { search, kind, group, sort, direction, offset };
  const change = useCallback(
    (part: Partial<SpecimenView>) =>
      setParams(
        (before) => {
          const next = new URLSearchParams(before);
          for (const [key, value] of Object.entries({ offset: 0, ...part }))
            if (value === undefined || value === '' || value === 0) next.delete(key);
            else next.set(key, String(value));
          return next;
        },
        { replace: true },
      ),
    [setParams],
  );
  return { view, change };
}
