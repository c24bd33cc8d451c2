import { LinkButton } from '../parts/Button.tsx';
import { PageHead } from '../parts/PageHead.tsx';

export function NotFoundPage() {
  return (
    <>
      <PageHead title="There is no such page" lead="The address may be mistyped, or the study deleted." />
      <div>
        <LinkButton to="/" look="primary">
          To the studies
        </LinkButton>
      </div>
    </>
  );
}
