import { LinkButton } from '../../parts/Button.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { type PageProps, studyPath } from '../../paths.ts';
import { useGroups } from '../../queries/groups.ts';
import { GroupsSection } from './GroupsSection.tsx';
import { SpecimensSection } from './SpecimensSection.tsx';

export function SherdsPage({ study }: PageProps) {
  const groups = useGroups(study);
  return (
    <>
      <PageHead
        title="Sherds"
        lead="Ware groups are the references; specimens belong to one, or to none yet."
        actions={
          <>
            <LinkButton to={studyPath(study, '/intake')}>Bring in a file</LinkButton>
            <a className="button quiet" href={`/api/studies/${study}/analyses.csv`} download>
              Download all analyses
            </a>
          </>
        }
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
