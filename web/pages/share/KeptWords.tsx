import { LinkButton } from '../../parts/Button.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { usePlacementText } from '../../queries/shares.ts';
import type { ViewState } from '../placement/view-state.ts';
import { FigureFiles } from './FigureFiles.tsx';
import { reportPath, talkPath } from './paths.ts';
import { Words } from './Words.tsx';

/** What a kept placement gives to a talk or a paper: its figures as files, and its words. */
export function KeptWords(at: {
  readonly study: string;
  readonly placement: string;
  readonly view: ViewState;
}) {
  const text = usePlacementText(at.study, at.placement);
  const from = `/api/studies/${at.study}/placements/${at.placement}`;
  return (
    <>
      <FigureFiles from={{ address: from }} view={at.view} />
      <section className="stack" aria-labelledby="bundle-heading">
        <h2 id="bundle-heading">Everything as one zip</h2>
        <p className="faint">
          Data as reported, settings, numbers, figures, methods and citations: a Data Package that any program
          can read and that another installation brings in to the same numbers.
        </p>
        <div>
          <a className="button plain" href={`${from}/bundle.zip`} download>
            Download the zip
          </a>
        </div>
      </section>
      <section className="stack" aria-labelledby="tell-heading">
        <h2 id="tell-heading">To tell others</h2>
        <p className="faint">
          As one file it opens from a disk without a network: the same page with its slip, talk, methods and
          data.
        </p>
        <div className="row">
          <a className="button plain" href={`${from}/page.html`} download>
            Save it as one file
          </a>
          <LinkButton to={talkPath(at.study, at.placement)}>Show it as a talk</LinkButton>
          <LinkButton to={reportPath(at.study, at.placement)}>Report to print</LinkButton>
        </div>
      </section>
      <Loaded query={text} what="the methods">
        {(words) => <Words text={words} />}
      </Loaded>
    </>
  );
}
