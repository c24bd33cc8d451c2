import { type KeyboardEvent, type PointerEvent, type RefObject, useRef, useState } from 'react';
import type { Corner, Outline } from '../../../../api/domain/colour/types.ts';
import { BLANK, boxed, cornered, type Drawing, keyed } from './drawing.ts';

export interface Drag {
  readonly from: Corner;
  readonly to: Corner;
}
/** Pixels of the screen that a press may wander and still be a press. */
const STILL = 6;

/** An outline while it is drawn, by pointer or by keys; begun anew whenever something else is outlined. */
export function useDrawing(
  what: string | null,
  { onDrawn, onLeave }: { onDrawn: (outline: Outline) => void; onLeave: () => void },
) {
  const [kept, setKept] = useState<{ what: string | null; drawing: Drawing }>({ what, drawing: BLANK });
  const drawing = kept.what === what ? kept.drawing : BLANK;
  const pad = useRef<HTMLDivElement>(null);
  const take = (next: Drawing) => {
    setKept({ what, drawing: next.closed ? BLANK : next });
    if (next.closed) onDrawn(next.corners);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const next = keyed(drawing, event);
    if (next === null && event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    if (next === null) onLeave();
    else take(next);
  };
  const pointer = usePointer(pad, ({ from, to }, isBox) =>
    take(isBox && drawing.corners.length === 0 ? boxed(drawing, from, to) : cornered(drawing, to)),
  );
  return { drawing, pad, take, drag: pointer.drag, handlers: { onKeyDown, ...pointer.handlers } };
}

/** Tells a press from a dragged rectangle. */
function usePointer(pad: RefObject<HTMLDivElement | null>, done: (drag: Drag, isBox: boolean) => void) {
  const [drag, setDrag] = useState<Drag | null>(null);
  const cornerOf = (event: PointerEvent): Corner => {
    const box = pad.current!.getBoundingClientRect();
    return [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height];
  };
  const far = ({ from, to }: Drag) => {
    const box = pad.current!.getBoundingClientRect();
    return Math.min(Math.abs(to[0] - from[0]) * box.width, Math.abs(to[1] - from[1]) * box.height) > STILL;
  };
  const onPointerDown = (event: PointerEvent) => {
    if (event.button !== 0 || !event.isPrimary) return;
    pad.current!.setPointerCapture(event.pointerId);
    const from = cornerOf(event);
    setDrag({ from, to: from });
  };
  const onPointerMove = (event: PointerEvent) => {
    if (drag) setDrag({ ...drag, to: cornerOf(event) });
  };
  const onPointerUp = (event: PointerEvent) => {
    if (!drag) return;
    setDrag(null);
    const whole = { ...drag, to: cornerOf(event) };
    done(whole, far(whole));
  };
  const onPointerCancel = () => setDrag(null);
  return {
    drag: drag && far(drag) ? drag : null,
    handlers: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel },
  };
}
