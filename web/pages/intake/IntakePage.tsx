import { useSearchParams } from 'wouter';
import { PageHead } from '../../parts/PageHead.tsx';
import type { PageProps } from '../../paths.ts';
import { ImportRun } from './ImportRun.tsx';
import { PastImports } from './PastImports.tsx';
import { PreviewStep } from './PreviewStep.tsx';
import { SourceStep } from './SourceStep.tsx';
import { useUpload } from './useUpload.ts';

/** From a laboratory's file to stored analyses: choose, check how it was understood, bring in. */
export default function IntakePage({ study }: PageProps) {
  const [params, setParams] = useSearchParams();
  const { upload, set, clear } = useUpload(study);
  const running = params.get('import');
  const started = (id: string) => {
    clear();
    setParams({ import: id });
  };
  return (
    <>
      <PageHead
        title="Intake"
        lead="A laboratory’s file becomes analyses. Nothing is stored before you have seen how it was understood."
      />
      {running && <ImportRun study={study} id={running} onAnother={() => setParams({})} />}
      {!running && upload && upload.file === null && upload.text === null && (
        <>
          <SourceStep study={study} onSource={set} />
          <PastImports study={study} />
        </>
      )}
      {!running && upload && (upload.file !== null || upload.text !== null) && (
        <PreviewStep study={study} upload={upload} onChange={set} onStarted={started} onGiveUp={clear} />
      )}
    </>
  );
}
