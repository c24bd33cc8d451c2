import type { Corner, Outline } from '../../../../api/domain/colour/types.ts';
import type { Grade } from '../../../../api/domain/trials/types.ts';

export interface Shape {
  readonly id: string;
  readonly label: string;
  readonly outline: Outline;
  readonly look: Grade | 'open' | 'grey';
}
interface Size {
  readonly width: number;
  readonly height: number;
}

/** Outlines over a picture. Gloss is told by pattern, for the picture below has every colour. */
export function Shapes(at: {
  readonly shapes: readonly Shape[];
  readonly size: Size;
  readonly name: string;
  readonly onChoose?: ((id: string) => void) | undefined;
}) {
  const { size, name } = at;
  return (
    <>
      <Patterns name={name} size={size} />
      {at.shapes.map((shape) => (
        <OneShape key={shape.id} shape={shape} {...at} />
      ))}
    </>
  );
}

function OneShape(at: {
  readonly shape: Shape;
  readonly size: Size;
  readonly name: string;
  readonly onChoose?: ((id: string) => void) | undefined;
}) {
  const { shape, size, name } = at;
  const points = pointsOf(shape.outline, size);
  const [x, y] = middleOf(shape.outline);
  const fill = PATTERNED.has(shape.look) ? `url(#${name}-${shape.look})` : 'transparent';
  // A shortcut for the mouse: the grid and the table below lead to each zone by keys.
  const choose = shape.look === 'grey' ? undefined : at.onChoose;
  return (
    <g
      className={`shape ${shape.look}`}
      {...(choose ? { onClick: () => choose(shape.id), style: { cursor: 'pointer' } } : {})}
    >
      <polygon className="casing" points={points} fill={fill} />
      <polygon className="line" points={points} fill="none" />
      <text x={x * size.width} y={y * size.height} fontSize={letters(size)}>
        {shape.label}
      </text>
    </g>
  );
}

const PATTERNED = new Set<Shape['look']>(['matt', 'satin', 'glossy']);
/** Height of a label in pixels of the picture. */
export const letters = ({ width, height }: Size) => 0.04 * Math.max(width, height);
export const pointsOf = (outline: Outline, { width, height }: Size) =>
  outline.map(([x, y]) => `${x * width},${y * height}`).join(' ');
const middleOf = (outline: Outline): Corner => [
  outline.reduce((sum, [x]) => sum + x, 0) / outline.length,
  outline.reduce((sum, [, y]) => sum + y, 0) / outline.length,
];

function Patterns({ name, size }: { readonly name: string; readonly size: Size }) {
  const step = Math.max(size.width, size.height) / 55;
  const wide = step / 9;
  const box = { width: step, height: step, patternUnits: 'userSpaceOnUse' } as const;
  const down = `M0,0 L${step},${step}`;
  return (
    <defs>
      <pattern id={`${name}-matt`} {...box}>
        <circle className="dot" cx={step / 2} cy={step / 2} r={wide} />
      </pattern>
      <pattern id={`${name}-satin`} {...box}>
        <path className="hatch" d={down} strokeWidth={wide} />
      </pattern>
      <pattern id={`${name}-glossy`} {...box}>
        <path className="hatch" d={`${down} M${step},0 L0,${step}`} strokeWidth={wide} />
      </pattern>
    </defs>
  );
}
