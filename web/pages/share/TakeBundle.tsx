import { FileTrigger } from 'react-aria-components';
import { useLocation } from 'wouter';
import { Button } from '../../parts/Button.tsx';
import { ErrorNotice } from '../../parts/Notice.tsx';
import { useTakeBundle } from '../../queries/shares.ts';
import { keptPath } from '../placement/paths.ts';

/** Brings a placement in from a file that another installation made. */
export function TakeBundle() {
  const take = useTakeBundle();
  const [, navigate] = useLocation();
  const choose = (files: FileList | null) => {
    const file = files?.[0];
    if (file)
      take.mutate(file, { onSuccess: ({ study, placement }) => navigate(keptPath(study, placement)) });
  };
  return (
    <section className="stack" aria-labelledby="take-heading">
      <h2 id="take-heading">Bring a placement in</h2>
      <p className="faint">
        A zip made by “Everything as one zip” on a kept placement, here or elsewhere. It becomes a study of
        its own, and its numbers are computed again from its data: one of this version must give the same; one
        of another version is told apart where it does not.
      </p>
      <ErrorNotice error={take.error} title="Not brought in; nothing has changed" />
      <div>
        <FileTrigger acceptedFileTypes={['.zip', 'application/zip']} onSelect={choose}>
          <Button isPending={take.isPending}>Choose a zip</Button>
        </FileTrigger>
      </div>
    </section>
  );
}
