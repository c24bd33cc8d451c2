import { useMemo } from 'react';
import { oxideProfile } from '../../../../api/figures/oxide-profile.ts';
import { scoresLayout } from '../../../../api/figures/scores-layout.ts';
import { scoresPlot } from '../../../../api/figures/scores-plot.ts';
import { THEMES } from '../../../../api/figures/themes.ts';
import { StillFigure } from '../StillFigure.tsx';
import type { Step } from './steps.ts';

/** px of a slide without its heading; the screen stretches it to its own size. */
const SHEET = { width: 960, height: 440, theme: THEMES.slide };
const ROWS = 11;

/** The figure of a step, if it has one. */
export function SlideFigure({ step, steps }: { readonly step: Step; readonly steps: readonly Step[] }) {
  const profile = useMemo(
    () => step.profile && { ...step.profile, rows: step.profile.rows.slice(0, ROWS) },
    [step],
  );
  const sheet = useMemo(() => sheetFor(step, steps), [step, steps]);
  const at = { sheet, frame: SHEET.height, className: 'talk-figure' };
  if (step.scores) return <StillFigure figure={scoresPlot} data={step.scores} {...at} />;
  if (profile) return <StillFigure figure={oxideProfile} data={profile} {...at} />;
  return null;
}

const bottomOf = ({ scores }: Step) => (scores ? scoresLayout(scores, SHEET).plot.bottom : SHEET.height);

/** A sheet on which the plot stands where it stands in every other step, however many lines its key has. */
function sheetFor(step: Step, steps: readonly Step[]) {
  if (step.scores === undefined) return SHEET;
  const highest = Math.min(...steps.map(bottomOf));
  return { ...SHEET, height: SHEET.height + highest - bottomOf(step) };
}
