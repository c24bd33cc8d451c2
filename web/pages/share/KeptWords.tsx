import { Loaded } from '../../parts/Loaded.tsx';
import { usePlacementText } from '../../queries/shares.ts';
import type { ViewState } from '../placement/view-state.ts';
import { FigureFiles } from './FigureFiles.tsx';
import { Words } from './Words.tsx';

/** What a kept placement gives to a talk or a paper: its figures as files, and its words. */
export function KeptWords(at: {
  readonly study: string;
  readonly placement: string;
  readonly view: ViewState;
}) {
  const text = usePlacementText(at.study, at.placement);
  return (
    <>
      <FigureFiles from={`/api/studies/${at.study}/placements/${at.placement}`} view={at.view} />
      <Loaded query={text} what="the methods">
        {(words) => <Words text={words} />}
      </Loaded>
    </>
  );
}
