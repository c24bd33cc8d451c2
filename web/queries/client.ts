import { QueryClient } from '@tanstack/react-query';
import { Refusal } from '../problem.ts';

/** What the service refused is not asked again; what did not reach it is. */
export const createQueries = () =>
  new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: 5_000,
        retry: (failures, error) => !(error instanceof Refusal) && failures < 2,
      },
    },
  });
