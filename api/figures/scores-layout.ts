import { extent, type ScaleLinear, scaleLinear } from 'd3';
import type { Box } from './box.ts';
import type { Theme } from './figure.ts';
import { type LegendEntry, legendHeight } from './legend.ts';
import type { ScoresData, ScoresEllipse } from './scores-data.ts';

export interface ScoresLayout {
  /** The plotting area, px. */
  readonly plot: Box;
  /** Score → px; one unit is equally long on both, so that distances can be read with a ruler. */
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly legendTop: number;
  readonly legend: readonly LegendEntry[];
}
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
}

/** Where everything of a scores plot stands: the drawing and whoever reads a pointer's place use the same. */
export function scoresLayout(data: ScoresData, sheet: Sheet): ScoresLayout {
  const { width, height, theme } = sheet;
  const em = theme.fontSize;
  const legend = legendOf(data);
  const legendRoom = legendHeight(legend, width - 2 * em, theme);
  const plot = {
    left: 4.4 * em,
    top: 0.8 * em,
    right: width - 0.8 * em,
    bottom: height - legendRoom - 4.1 * em,
  };
  const shown = data.view ?? everything(data);
  const [x, y] = equalAspect(shown, plot);
  return { plot, x, y, legendTop: height - legendRoom - 0.4 * em, legend };
}

/** px the figure wants at a width: a plot about two thirds as high as wide, and its key below. */
export function scoresHeight(data: ScoresData, width: number, theme: Theme): number {
  const em = theme.fontSize;
  const plot = Math.min(Math.max(0.64 * width, 21 * em), 40 * em);
  return plot + 4.9 * em + legendHeight(legendOf(data), width - 2 * em, theme);
}

function legendOf(data: ScoresData): LegendEntry[] {
  const groups = data.groups.map(({ name, slot, n }) => ({
    kind: 'group' as const,
    slot,
    text: `${name} (${n})`,
  }));
  const replica = data.replicas.length > 0 ? [{ kind: 'replica' as const, text: 'Replica' }] : [];
  const hasEllipse = data.groups.some(({ ellipse }) => ellipse !== null);
  const level = Math.round(data.level * 1000) / 10;
  const ellipse = hasEllipse
    ? [{ kind: 'ellipse' as const, text: `Where ${level} % of new members would lie` }]
    : [];
  const loadings = data.loadings === null ? [] : [{ kind: 'loading' as const, text: 'Oxide (loading)' }];
  return [...groups, ...replica, ...ellipse, ...loadings];
}

type Shown = NonNullable<ScoresData['view']>;

/** The part of the plane that holds every point and ellipse, with a margin. */
export function everything(data: ScoresData): Shown {
  const xs: number[] = [];
  const ys: number[] = [];
  const add = (x: number, y: number) => {
    xs.push(x);
    ys.push(y);
  };
  for (const group of data.groups) {
    for (const point of group.points) add(point.x, point.y);
    if (group.ellipse !== null) for (const [x, y] of corners(group.ellipse)) add(x, y);
  }
  for (const replica of data.replicas) {
    add(replica.x, replica.y);
    for (const [x, y] of replica.path ?? []) add(x, y);
  }
  return { x: padded(extent(xs) as [number, number]), y: padded(extent(ys) as [number, number]) };
}

/** Outermost points of an ellipse along both axes. */
function corners({ centre, semiAxes, angle }: ScoresEllipse): [number, number][] {
  const [a, b] = semiAxes;
  const halfWidth = Math.hypot(a * Math.cos(angle), b * Math.sin(angle));
  const halfHeight = Math.hypot(a * Math.sin(angle), b * Math.cos(angle));
  return [
    [centre[0] - halfWidth, centre[1] - halfHeight],
    [centre[0] + halfWidth, centre[1] + halfHeight],
  ];
}

function padded([low, high]: [number | undefined, number | undefined]): [number, number] {
  if (low === undefined || high === undefined) return [-1, 1];
  const margin = high > low ? 0.05 * (high - low) : 1;
  return [low - margin, high + margin];
}

/** Scales on which one unit is the same length both ways; the shorter domain is widened round its middle. */
function equalAspect(shown: Shown, plot: Box): [ScaleLinear<number, number>, ScaleLinear<number, number>] {
  const [width, height] = [plot.right - plot.left, plot.bottom - plot.top];
  const unit = Math.max((shown.x[1] - shown.x[0]) / width, (shown.y[1] - shown.y[0]) / height);
  const about = ([low, high]: readonly [number, number], px: number) => {
    const middle = (low + high) / 2;
    return [middle - (unit * px) / 2, middle + (unit * px) / 2] as const;
  };
  return [
    scaleLinear(about(shown.x, width), [plot.left, plot.right]),
    scaleLinear(about(shown.y, height), [plot.bottom, plot.top]),
  ];
}
