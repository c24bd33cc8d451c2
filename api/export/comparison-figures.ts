import type { FigureLook, FigureName } from '../contract/figure.ts';
import type { Comparison } from '../contract/placement.ts';
import { groupSpokenOf } from '../domain/placement/sentence.ts';
import { RequirementError } from '../domain/requirement.ts';
import { loadingsCaption, profileCaption, scoresCaption } from '../figures/captions.ts';
import type { Figure, Theme } from '../figures/figure.ts';
import { loadingsData } from '../figures/loadings-data.ts';
import { loadingsHeight, loadingsPlot } from '../figures/loadings-plot.ts';
import { oxideProfile } from '../figures/oxide-profile.ts';
import type { ProfileData } from '../figures/profile-data.ts';
import { profileData } from '../figures/profile-from-model.ts';
import { profileHeight } from '../figures/profile-layout.ts';
import type { ScoresData } from '../figures/scores-data.ts';
import { scoresData } from '../figures/scores-from-model.ts';
import { scoresPlot } from '../figures/scores-plot.ts';
import { THEMES } from '../figures/themes.ts';
import { FORMATS, type Format, grown } from './formats.ts';

/** A figure ready to be drawn on its sheet, with what is to be said beneath it. */
export interface Prepared {
  readonly draw: (render: <Data>(figure: Figure<Data>, data: Data, format: Format) => string) => string;
  readonly format: Format;
  readonly title: string;
  readonly caption: string;
}

/** Sets up one figure of a comparison as it is to be looked at; throws where the comparison has nothing to show. */
export function prepareFigure(comparison: Comparison, name: FigureName, look: FigureLook): Prepared {
  return PREPARE[name](comparison, look);
}

const PREPARE: Record<FigureName, (comparison: Comparison, look: FigureLook) => Prepared> = {
  scores(comparison, look) {
    const data = scoresOf(comparison, look);
    const caption = scoresCaption(data, comparison.model);
    return prepared(scoresPlot, data, { look, caption });
  },
  loadings({ model }, look) {
    const data = loadingsData(model, { id: 'loadings', components: componentsOf(model, look) });
    const caption = loadingsCaption(data, model);
    return prepared(loadingsPlot, data, { look, caption, height: loadingsHeight });
  },
  profile(comparison, look) {
    const all = profileOf(comparison, look);
    const { theme, height } = FORMATS[look.format];
    const data = theme === 'slide' ? { ...all, rows: all.rows.slice(0, rowsThatFit(height)) } : all;
    const caption = profileCaption(data, comparison.model);
    return prepared(oxideProfile, data, { look, caption, height: profileHeight });
  },
};

interface Around<Data> {
  readonly look: FigureLook;
  readonly caption: string;
  /** px the figure wants at a width, where it wants more the more it has to show. */
  readonly height?: (data: Data, width: number, theme: Theme) => number;
}

function prepared<Data extends { readonly title: string }>(
  figure: Figure<Data>,
  data: Data,
  { look, caption, height }: Around<Data>,
): Prepared {
  const sheet = FORMATS[look.format];
  const format = height ? grown(sheet, height(data, sheet.width, THEMES[sheet.theme])) : sheet;
  return { draw: (render) => render(figure, data, format), format, title: data.title, caption };
}

/** Rows that stand apart on a slide: its type is 20 px, its key and axis take some 150. */
const rowsThatFit = (height: number) => Math.floor((height - 150) / 26);

function scoresOf({ model, placements, groups }: Comparison, look: FigureLook): ScoresData {
  const { level, ellipses, loadings, naming, view } = look;
  const data = scoresData(model, placements, {
    ...{ id: 'scores', components: componentsOf(model, look), level, ellipses, loadings, naming },
    chosen: look.replica ?? placements[0]?.id ?? null,
    slots: Object.fromEntries(groups.map(({ id, position }) => [id, position])),
  });
  if (view === undefined) return data;
  const [left, right, low, high] = view as [number, number, number, number];
  if (!(left < right && low < high))
    throw new RequirementError(
      `a view runs from less to more, across and up; ${view.join(',')} was asked for`,
    );
  return { ...data, view: { x: [left, right], y: [low, high] } };
}

function componentsOf({ pca }: Comparison['model'], { across, up }: FigureLook): [number, number] {
  const have = pca.eigenvalues.length;
  // A model of a single component is still drawn, along a line.
  if (Math.max(across, have > 1 ? up : 1) > have)
    throw new RequirementError(
      `this model has ${have} principal components; ${Math.max(across, up)} was asked for`,
    );
  return [across - 1, up - 1];
}

function profileOf({ model, placements, groups }: Comparison, look: FigureLook): ProfileData {
  const placed = look.replica ? placements.find(({ id }) => id === look.replica) : placements[0];
  if (placed === undefined)
    throw new RequirementError(
      look.replica
        ? 'a profile is of a replica of this comparison; the one asked for is not among them'
        : 'a profile is of a replica; this comparison has placed none',
    );
  const group = look.against ?? groupSpokenOf(placed.groups)?.group ?? '';
  const slot = groups.find(({ id }) => id === group)?.position ?? 0;
  const choices = { id: 'profile', group, slot, basis: look.basis, chosen: placed.id };
  const data = profileData(model, look.others ? placements : [placed], choices);
  if (data === null)
    throw new RequirementError(
      'a profile is held against a ware group of this comparison; the one asked for is not among them',
    );
  return data;
}
