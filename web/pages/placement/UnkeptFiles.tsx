import type { FigureFile, FigureWish } from '../../../api/contract/figure.ts';
import type { Comparison, ComparisonRequest } from '../../../api/contract/placement.ts';
import { Loaded } from '../../parts/Loaded.tsx';
import { comparisonFigure, useComparisonText } from '../../queries/placements.ts';
import { FigureFiles } from '../share/FigureFiles.tsx';
import { Words } from '../share/Words.tsx';
import { Fold, Opened } from './panel/Fold.tsx';
import { asked } from './slip/choices.ts';
import type { Slip } from './slip/useSlip.ts';
import type { ViewState } from './view-state.ts';

interface UnkeptProps {
  readonly study: string;
  readonly request: ComparisonRequest;
  readonly result: Comparison;
  readonly view: ViewState;
  readonly slip: Slip;
}

/** The comparison as asked for, with the slip as the slider stands. */
export const withSlipAsked = ({ request, slip, result }: Omit<UnkeptProps, 'view' | 'study'>) => ({
  ...request,
  slip: [...request.slip, ...asked(slip.choices.get(), result.replicas)],
});

/** Figures and words of a comparison that is not kept. */
export function UnkeptFiles(at: UnkeptProps) {
  const fetch = (file: string, look: FigureWish) =>
    comparisonFigure(at.study, file as FigureFile, { comparison: withSlipAsked(at), look });
  return (
    <>
      <FigureFiles from={{ fetch }} view={at.view} />
      <Fold title="Methods, captions and sources" level={2}>
        <Opened>
          <UnkeptWords {...at} />
        </Opened>
      </Fold>
    </>
  );
}

function UnkeptWords(at: UnkeptProps) {
  const text = useComparisonText(at.study, withSlipAsked(at));
  return (
    <Loaded query={text} what="the methods">
      {(words) => <Words text={words} />}
    </Loaded>
  );
}
