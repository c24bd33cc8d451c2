import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Button } from './Button.tsx';
import { ErrorNotice } from './Notice.tsx';
import { PageHead } from './PageHead.tsx';

/** Shows what a query brought; says so while it is on its way or has failed. */
export function Loaded<Data>(at: {
  readonly query: UseQueryResult<Data>;
  readonly what: string;
  /** The query carries the whole page: without an answer the page still has its heading. */
  readonly page?: boolean;
  readonly children: (data: Data) => ReactNode;
}) {
  const { query } = at;
  if (query.data !== undefined)
    return (
      <>
        {query.isError && <ErrorNotice error={query.error} title="This may be out of date" />}
        {at.children(query.data)}
      </>
    );
  if (query.isError)
    return (
      <div className="stack">
        {at.page && <PageHead title={`Could not read ${at.what}`} />}
        <ErrorNotice error={query.error} {...(at.page ? {} : { title: `Could not read ${at.what}` })} />
        <div>
          <Button onPress={() => query.refetch()}>Try again</Button>
        </div>
      </div>
    );
  return (
    <p className="waiting" role="status">
      Reading {at.what} …
    </p>
  );
}
