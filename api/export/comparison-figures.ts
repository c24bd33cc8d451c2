import type { FigureLook, FigureName } from '../contract/figure.ts';
import type { Comparison } from '../contract/placement.ts';
import { groupSpokenOf } from '../domain/placement/sentence.ts';
import { RequirementError } from '../domain/requirement.ts';
import { loadingsCaption, profileCaption, scoresCaption } from '../figures/captions.ts';
import { dendrogramCaption, heatMapCaption, pairCaption, ternaryCaption } from '../figures/captions-more.ts';
import { dendrogram, dendrogramHeight, namesFit } from '../figures/dendrogram.ts';
import { type DistancesData, distancesData } from '../figures/distances-data.ts';
import { heatMap, heatMapHeight } from '../figures/heat-map.ts';
import { loadingsData } from '../figures/loadings-data.ts';
import { loadingsHeight, loadingsPlot } from '../figures/loadings-plot.ts';
import { oxideProfile } from '../figures/oxide-profile.ts';
import { pairData, tellingOxides, ternaryData } from '../figures/oxides-from-model.ts';
import { pairHeight, pairPlot } from '../figures/pair-plot.ts';
import type { ProfileData } from '../figures/profile-data.ts';
import { profileData } from '../figures/profile-from-model.ts';
import { profileHeight } from '../figures/profile-layout.ts';
import type { ScoresData } from '../figures/scores-data.ts';
import { scoresData } from '../figures/scores-from-model.ts';
import { scoresPlot } from '../figures/scores-plot.ts';
import { ternaryHeight, ternaryPlot } from '../figures/ternary-plot.ts';
import { THEMES } from '../figures/themes.ts';
import { FORMATS, grown } from './formats.ts';
import { type Prepared, prepared } from './prepared.ts';

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
  pair(comparison, look) {
    const { model, placements } = comparison;
    const { axis, level, ellipses } = look;
    const oxides = oxidesOf(model, look, 2) as [string, string];
    const choices = { id: 'pair', oxides, axis, level, ellipses, ...lookOf(comparison, look) };
    const data = pairData(model, placements, choices)!;
    return prepared(pairPlot, data, { look, caption: pairCaption(data), height: pairHeight });
  },
  ternary(comparison, look) {
    const { model, placements } = comparison;
    const oxides = oxidesOf(model, look, 3) as [string, string, string];
    const data = ternaryData(model, placements, { id: 'ternary', oxides, ...lookOf(comparison, look) })!;
    return prepared(ternaryPlot, data, { look, caption: ternaryCaption(data), height: ternaryHeight });
  },
  dendrogram(comparison, look) {
    const data = distancesOf(comparison, 'dendrogram', look);
    const sheet = FORMATS[look.format];
    const theme = THEMES[sheet.theme];
    const named = namesFit(data, { ...grown(sheet, dendrogramHeight(data, sheet.width, theme)), theme });
    const caption = dendrogramCaption(data, comparison.model, named);
    return prepared(dendrogram, data, { look, caption, height: dendrogramHeight });
  },
  heatmap(comparison, look) {
    const data = distancesOf(comparison, 'heatmap', look);
    const caption = heatMapCaption(data, comparison.model);
    return prepared(heatMap, data, { look, caption, height: heatMapHeight });
  },
};

const lookOf = ({ groups, placements }: Comparison, { replica }: FigureLook) => ({
  slots: Object.fromEntries(groups.map(({ id, position }) => [id, position])),
  chosen: replica ?? placements[0]?.id ?? null,
});

function distancesOf(comparison: Comparison, id: string, look: FigureLook): DistancesData {
  const { model, placements } = comparison;
  return distancesData(model, placements, { id, linkage: look.linkage, ...lookOf(comparison, look) });
}

/** The oxides asked for; where none were, those that tell the most apart. */
function oxidesOf(model: Comparison['model'], { oxides }: FigureLook, count: number): string[] {
  const chosen = oxides ?? tellingOxides(model, count);
  const unknown = chosen.find((oxide) => !model.parts.includes(oxide));
  if (unknown !== undefined)
    throw new RequirementError(
      `a figure shows oxides that were compared; ${unknown || 'nothing'} is not one`,
    );
  if (chosen.length !== count || new Set(chosen).size !== count)
    throw new RequirementError(
      `this figure shows ${count} different oxides; ${chosen.join(', ')} ${oxides ? 'were asked for' : 'are all there are'}`,
    );
  return chosen;
}

/** Rows that stand apart on a slide: its type is 20 px, its key and axis take some 150. */
const rowsThatFit = (height: number) => Math.floor((height - 150) / 26);

function scoresOf(comparison: Comparison, look: FigureLook): ScoresData {
  const { model, placements } = comparison;
  const { level, ellipses, loadings, naming, view } = look;
  const data = scoresData(model, placements, {
    ...{ id: 'scores', components: componentsOf(model, look), level, ellipses, loadings, naming },
    ...lookOf(comparison, look),
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
