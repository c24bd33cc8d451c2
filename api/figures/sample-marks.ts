import type { ShownGroup, ShownSample } from './chosen-samples.ts';
import type { Theme } from './figure.ts';
import type { LegendEntry } from './legend.ts';
import { colourOf, type Dot, markOf, marksPath } from './marks.ts';
import { type Parent, replicaMark } from './parts.ts';

/** Marks of specimens, one path a group, replicas over them. */
export function drawSamples(
  parent: Parent,
  samples: readonly ShownSample[],
  { at, theme, scale = 1 }: { at: (sample: ShownSample) => Dot; theme: Theme; scale?: number },
): void {
  const slots = new Set(samples.flatMap(({ slot }) => slot ?? []));
  for (const slot of slots) {
    const dots = samples.filter((one) => one.slot === slot).map(at);
    parent
      .append('path')
      .attr('class', 'references')
      .attr('data-slot', slot)
      .attr('d', marksPath(markOf(slot), scale * theme.markSize, dots))
      .attr('fill', colourOf(slot, theme));
  }
  for (const sample of samples)
    if (sample.slot === null) replicaMark(parent, at(sample), { theme, chosen: sample.chosen, scale });
}

/** Key of groups and replicas. */
export function samplesLegend(groups: readonly ShownGroup[], samples: readonly ShownSample[]): LegendEntry[] {
  const replicas = samples.filter(({ slot }) => slot === null);
  const chosen = replicas.find((one) => one.chosen);
  const others = replicas.length - (chosen ? 1 : 0);
  return [
    ...groups.map(({ name, slot, n }) => ({ kind: 'group' as const, slot, text: `${name} (${n})` })),
    ...(chosen ? [{ kind: 'chosen' as const, text: chosen.label }] : []),
    ...(others > 0
      ? [{ kind: 'replica' as const, text: others === 1 ? 'Another replica' : `${others} other replicas` }]
      : []),
  ];
}
