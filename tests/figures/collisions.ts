import { textWidth } from '../../api/figures/text.ts';

interface Placed {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Boxes of every upright text of a figure, moved as its groups are moved; widths from the font itself. */
export function textBoxes(svg: SVGSVGElement): Placed[] {
  return [...svg.querySelectorAll('text')]
    .filter((one) => one.textContent !== '' && !/rotate/.test(one.getAttribute('transform') ?? ''))
    .map((one) => {
      const size = Number(attributeOf(one, 'font-size'));
      const weight = attributeOf(one, 'font-weight') === '600' ? 'semibold' : 'regular';
      const width = textWidth(one.textContent!, size, weight);
      const [dx, dy] = movedBy(one);
      const x = dx + Number(one.getAttribute('x') ?? 0);
      const em = (value: string | null) => (value?.endsWith('em') ? Number.parseFloat(value) * size : 0);
      const y = dy + Number(one.getAttribute('y') ?? 0) + em(one.getAttribute('dy'));
      const before = { start: 0, middle: 0.5, end: 1 }[attributeOf(one, 'text-anchor') ?? 'start']!;
      const left = x - before * width;
      return { text: one.textContent!, left, right: left + width, top: y - 0.7 * size, bottom: y };
    });
}

/** Pairs of texts that touch. */
export function collisions(svg: SVGSVGElement): string[] {
  const boxes = textBoxes(svg);
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.text} | ${b.text}`),
  );
}

/** Texts that run off the sheet. */
export function cutTexts(svg: SVGSVGElement): string[] {
  const [width, height] = ['width', 'height'].map((name) => Number(svg.getAttribute(name)));
  return textBoxes(svg)
    .filter(
      ({ left, right, top, bottom }) => left < -0.5 || right > width! + 0.5 || top < 0 || bottom > height!,
    )
    .map(({ text }) => text);
}

function attributeOf(element: Element, name: string): string | null {
  for (let at: Element | null = element; at; at = at.parentElement)
    if (at.hasAttribute(name)) return at.getAttribute(name);
  return null;
}

function movedBy(element: Element): [number, number] {
  let [dx, dy] = [0, 0];
  for (let at: Element | null = element; at; at = at.parentElement) {
    const [, x, y] = /translate\((-?[\d.]+),(-?[\d.]+)\)/.exec(at.getAttribute('transform') ?? '') ?? [];
    dx += Number(x ?? 0);
    dy += Number(y ?? 0);
  }
  return [dx, dy];
}
