import { LinkButton } from '../../parts/Button.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { studyPath } from '../../paths.ts';

/** The page before there is a sherd in any ware group. */
export function NothingToCompare({ study, groups }: { readonly study: string; readonly groups: number }) {
  return (
    <EmptyState
      title={groups === 0 ? 'No ware groups yet' : 'The ware groups have no sherds yet'}
      actions={
        <>
          <LinkButton to={studyPath(study, '/intake')} look="primary">
            Bring in analysed sherds
          </LinkButton>
          <LinkButton to={studyPath(study, '/sherds')}>To the ware groups</LinkButton>
          <LinkButton to="/" look="quiet">
            Look round the demo study
          </LinkButton>
        </>
      }
    >
      <p>
        A replica is placed among the sherds of ware groups: at least four analysed sherds in one group,
        better twenty. Bring in a laboratory’s file, and sort the sherds into groups.
      </p>
    </EmptyState>
  );
}
