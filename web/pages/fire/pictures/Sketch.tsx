import type { Outline } from '../../../../api/domain/colour/types.ts';
import type { Drawing } from './drawing.ts';
import { pointsOf } from './Shapes.tsx';
import type { Drag } from './useDrawing.ts';

/** The outline so far, the rectangle while it is dragged, and the crosshair; white on black, so that it shows on any picture. */
export function Sketch(at: {
  readonly drawing: Drawing;
  readonly size: { readonly width: number; readonly height: number };
  readonly drag: Drag | null;
}) {
  const { size, drawing, drag } = at;
  const box: Outline = drag
    ? [drag.from, [drag.to[0], drag.from[1]], drag.to, [drag.from[0], drag.to[1]]]
    : [];
  const arm = Math.max(size.width, size.height) / 30;
  const [x, y] = [drawing.at[0] * size.width, drawing.at[1] * size.height];
  return (
    <svg viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true" focusable="false">
      {['casing', 'line'].map((look) => (
        <g key={look} className={`sketch ${look}`}>
          <polyline points={pointsOf(drawing.corners, size)} />
          <polygon points={pointsOf(box, size)} />
          <path d={`M${x - arm},${y} H${x + arm} M${x},${y - arm} V${y + arm}`} />
          {drawing.corners.map(([cornerX, cornerY], i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: corners only come and go at the end
            <circle key={i} cx={cornerX * size.width} cy={cornerY * size.height} r={arm / 5} />
          ))}
        </g>
      ))}
    </svg>
  );
}
