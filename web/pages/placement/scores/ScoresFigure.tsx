import { type ReactNode, useCallback, useEffect, useId, useRef, useState } from 'react';
import type { ScoresData } from '../../../../api/figures/scores-data.ts';
import { scoresHeight } from '../../../../api/figures/scores-layout.ts';
import { scoresPlot } from '../../../../api/figures/scores-plot.ts';
import { Button } from '../../../parts/Button.tsx';
import { FigureDownload } from '../../../parts/figure/FigureDownload.tsx';
import { FigureView, type Sheet } from '../../../parts/figure/FigureView.tsx';
import { createSource, type Source } from '../../../parts/figure/source.ts';
import { useCombined } from '../../../parts/figure/useSource.ts';
import { Cover } from './Cover.tsx';
import { type Reading, Readout } from './Readout.tsx';
import type { View } from './view.ts';
import type { Zooming } from './zooming.ts';

export interface ScoresFigureProps {
  readonly source: Source<ScoresData>;
  /** When this changes the plane is another one, and the whole of it is shown again. */
  readonly plane: unknown;
  readonly onChoose: (replica: string) => void;
  /** What can be done with a sherd that is being read. */
  readonly sherdActions: (id: string, label: string) => ReactNode;
}

const chosenOf = ({ replicas }: ScoresData) => replicas.find(({ chosen }) => chosen) ?? null;
const withView = (data: ScoresData, view: View): ScoresData => ({ ...data, view });
/** The scores plot with everything one does on it: reading points, dragging, zooming, choosing a replica. */
export function ScoresFigure({ source, plane, onChoose, sherdActions }: ScoresFigureProps) {
  const [view] = useState(() => createSource<View>(null));
  const [reading] = useState(() => createSource<Reading | null>(null));
  const shown = useCombined(source, view, withView);
  const sheet = useRef<Sheet | null>(null);
  const redrawn = useRef<() => void>(() => {});
  const hint = useId();
  const onDrawn = useCallback((next: Sheet) => {
    sheet.current = next;
    redrawn.current();
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another plane has no use for the old view
  useEffect(() => {
    view.set(null);
    reading.set(null);
  }, [plane, view, reading]);
  const zooming = useRef<Zooming | null>(null);
  const nearer = (factor: number) =>
    zooming.current?.by(factor, reading.get()?.read ?? chosenOf(source.get()));
  const at = { source, shown, view, reading, sheet, redrawn, hint, onChoose };
  return (
    <div className="stack tight">
      <div className="scores">
        <FigureView figure={scoresPlot} source={shown} height={scoresHeight} onDrawn={onDrawn} />
        <Cover {...at} zooming={zooming} />
      </div>
      <div className="under-plot">
        <Readout source={reading} sherdActions={sherdActions} />
        <div className="zoom-buttons">
          <Button aria-label="Nearer" onPress={() => nearer(1.6)}>
            +
          </Button>
          <Button aria-label="Further" onPress={() => nearer(1 / 1.6)}>
            −
          </Button>
          <Button onPress={() => zooming.current?.reset()}>Whole</Button>
        </div>
      </div>
      <p id={hint} className="hint small faint">
        Drag to move; Ctrl and wheel, pinch, or the + and − keys to come nearer, 0 for the whole. With the
        plot in focus, the arrow keys go from point to point and from group to group.
      </p>
      <div>
        <FigureDownload figure={scoresPlot} source={shown} height={scoresHeight} name="scores" />
      </div>
    </div>
  );
}
