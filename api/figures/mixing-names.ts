import type { Box } from './box.ts';
import type { Theme } from './figure.ts';
import { placeLabels } from './labels.ts';
import type { Dot } from './marks.ts';
import type { MixingData, MixingPoint } from './mixing-data.ts';
import type { Parent } from './parts.ts';
import { fitText, numeral, textWidth } from './text.ts';

interface On {
  readonly plot: Box;
  readonly theme: Theme;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

/** Names slip, paint and what is left where they find room; the share drawn off stands with the last. */
export function drawMixingNames(root: Parent, data: MixingData, on: On): void {
  const { theme, plot } = on;
  const em = theme.fontSize;
  const share = `${numeral(100 * data.f, 1)} % slip drawn off`;
  const named: { text: string; at: Dot }[] = [
    { text: data.paint.label, at: dotOf(data.paint, on) },
    ...(data.drawnOff ? [{ text: share, at: dotOf(data.drawnOff, on) }] : []),
    { text: data.slip.label, at: dotOf(data.slip, on) },
  ].map(({ text, at }) => ({ text: fitText(text, em, 14 * em, 'semibold'), at }));
  const radius = 0.9 * theme.markSize;
  const kept = named.map(({ at }) => around(at, radius));
  const wishes = named.map(({ text, at }) => ({
    ...{ ...at, markRadius: radius, height: 1.1 * em },
    width: textWidth(text, em, 'semibold') + 0.3 * em,
  }));
  const dots = data.others.map((other) => dotOf(other, on));
  placeLabels(wishes, { bounds: plot, kept, dots: [...dots, ...along(data, on)] }).forEach((label, i) => {
    if (label === null) return;
    root
      .append('text')
      .attr('class', 'name')
      .attr('x', (label.box.left + label.box.right) / 2)
      .attr('y', (label.box.top + label.box.bottom) / 2 + 0.34 * em)
      .attr('text-anchor', 'middle')
      .attr('font-weight', 600)
      .attr('fill', theme.ink)
      .text(named[i]!.text);
  });
}

const dotOf = ({ x, y }: MixingPoint, on: On): Dot => ({ x: on.x(x.value), y: on.y(y.value) });
const around = ({ x, y }: Dot, r: number): Box => ({ left: x - r, right: x + r, top: y - r, bottom: y + r });

/** The line as dots that names had better not hide. */
function along({ slip, end }: MixingData, on: On): Dot[] {
  const from = dotOf(slip, on);
  const to = { x: on.x(end.x), y: on.y(end.y) };
  return Array.from({ length: 60 }, (_, i) => ({
    x: from.x + (i / 59) * (to.x - from.x),
    y: from.y + (i / 59) * (to.y - from.y),
  }));
}
