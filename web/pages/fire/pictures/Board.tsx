import { useEffect, useId } from 'react';
import type { Picture } from '../../../../api/contract/picture.ts';
import type { Outline } from '../../../../api/domain/colour/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { closed, dropped, takenBack } from './drawing.ts';
import { type Shape, Shapes } from './Shapes.tsx';
import { Sketch } from './Sketch.tsx';
import { useDrawing } from './useDrawing.ts';
import './pictures.css';

interface BoardProps {
  readonly picture: Picture;
  readonly url: string;
  readonly alt: string;
  readonly shapes: readonly Shape[];
  readonly onChoose: (id: string) => void;
  /** What is being outlined; null while nothing is. */
  readonly drawing: string | null;
  readonly onDrawn: (outline: Outline) => void;
  readonly onLeave: () => void;
}

/** A picture with the outlines on it, and, while one is drawn, the place to draw it. */
export function Board(at: BoardProps) {
  const { picture, drawing: what } = at;
  const name = useId();
  const help = useId();
  const draw = useDrawing(what, at);
  const size = { width: picture.width, height: picture.height };
  const { pad } = draw;
  useEffect(() => {
    if (what !== null) pad.current?.focus();
  }, [what, pad]);
  return (
    <div className="stack tight">
      <div className="board" style={{ aspectRatio: `${size.width} / ${size.height}` }}>
        <img src={at.url} alt={at.alt} {...size} />
        <svg viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true" focusable="false">
          <Shapes shapes={at.shapes} size={size} name={name} onChoose={what ? undefined : at.onChoose} />
        </svg>
        {what !== null && (
          <div
            ref={pad}
            className="pad"
            role="application"
            aria-label={`Draw the outline of ${what}`}
            aria-describedby={help}
            // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes the keys that draw
            tabIndex={0}
            {...draw.handlers}
          >
            <Sketch drawing={draw.drawing} size={size} drag={draw.drag} />
          </div>
        )}
      </div>
      {what !== null && <Bar draw={draw} help={help} onLeave={at.onLeave} />}
    </div>
  );
}

function Bar(at: {
  readonly draw: ReturnType<typeof useDrawing>;
  readonly help: string;
  readonly onLeave: () => void;
}) {
  const { drawing, take } = at.draw;
  const some = drawing.corners.length > 0;
  return (
    <>
      <p id={at.help} className="small">
        Press at each corner and end on the first, or drag a rectangle. By keys: arrows move the crosshair,
        with Shift further; Enter sets a corner, and closes the outline on the first corner or twice on one
        place; Backspace takes one back; Escape drops it.
      </p>
      <p role="status" className="small">
        {drawing.said || 'Nothing drawn yet'}
      </p>
      <div className="row">
        <Button look="primary" isDisabled={drawing.corners.length < 3} onPress={() => take(closed(drawing))}>
          Close the outline
        </Button>
        <Button isDisabled={!some} onPress={() => take(takenBack(drawing))}>
          Take a corner back
        </Button>
        <Button look="quiet" onPress={() => (some ? take(dropped(drawing)) : at.onLeave())}>
          {some ? 'Drop it' : 'Stop drawing'}
        </Button>
      </div>
    </>
  );
}
