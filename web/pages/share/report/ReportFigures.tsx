import { useMemo } from 'react';
import type { ComparisonText } from '../../../../api/contract/figure.ts';
import type { Comparison } from '../../../../api/contract/placement.ts';
import { groupSpokenOf } from '../../../../api/domain/placement/sentence.ts';
import { oxideProfile } from '../../../../api/figures/oxide-profile.ts';
import { profileData } from '../../../../api/figures/profile-from-model.ts';
import { profileHeight } from '../../../../api/figures/profile-layout.ts';
import { scoresData } from '../../../../api/figures/scores-from-model.ts';
import { scoresHeight } from '../../../../api/figures/scores-layout.ts';
import { scoresPlot } from '../../../../api/figures/scores-plot.ts';
import { THEMES } from '../../../../api/figures/themes.ts';
import { StillFigure } from '../StillFigure.tsx';

/** A double column: 175 mm, one px a point. */
const WIDTH = 496;
const theme = THEMES.print;

export function ReportFigures(at: {
  readonly result: Comparison;
  readonly slots: Readonly<Record<string, number>>;
  readonly text: ComparisonText;
}) {
  const { result, slots, text } = at;
  const drawn = useMemo(() => draw(result, slots), [result, slots]);
  return (
    <>
      <figure>
        <StillFigure figure={scoresPlot} {...drawn.scores} className="report-figure" />
        <figcaption className="small">{text.captions.scores}</figcaption>
      </figure>
      {drawn.profile && (
        <figure>
          <StillFigure figure={oxideProfile} {...drawn.profile} className="report-figure" />
          <figcaption className="small">{text.captions.profile}</figcaption>
        </figure>
      )}
    </>
  );
}

const sheet = (height: number) => ({ width: WIDTH, height: Math.ceil(height), theme });

function draw({ model, placements }: Comparison, slots: Readonly<Record<string, number>>) {
  const [first] = placements;
  const scores = scoresData(model, placements, {
    ...{ id: 'report-scores', components: [0, 1], level: 0.95, ellipses: true, loadings: false },
    ...{ naming: 'replicas', chosen: first?.id ?? null, slots },
  });
  const group = first && groupSpokenOf(first.groups)?.group;
  const profile =
    first && group
      ? profileData(model, [first], {
          ...{ id: 'report-profile', group, slot: slots[group] ?? 0, basis: 'ratio', chosen: first.id },
        })
      : null;
  return {
    scores: { data: scores, sheet: sheet(scoresHeight(scores, WIDTH, theme)) },
    profile: profile && { data: profile, sheet: sheet(profileHeight(profile, WIDTH, theme)) },
  };
}
