import { LinkButton } from '../../parts/Button.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { useGroups } from '../../queries/groups.ts';
import { type PageProps, studyPath } from '../../routes.ts';
import { GroupsSection } from './GroupsSection.tsx';
import { SpecimensSection } from './SpecimensSection.tsx';

export function SherdsPage({ study }: PageProps) {
  const groups = useGroups(study);
  return (
    <>
      <PageHead
        title="Sherds"
        lead="Ware groups are the references; specimens belong to one, or to none yet."
        actions={<LinkButton to={studyPath(study, '/intake')}>Bring in a file</LinkButton>}
      />
      <Loaded query={groups} what="the ware groups">
        {(rows) => (
          <>
            <GroupsSection study={study} groups={rows} />
            <SpecimensSection study={study} groups={rows} />
          </>
        )}
      </Loaded>
    </>
  );
}
