import type { Step } from './walk.ts';

export type PlotAction =
  | { readonly kind: 'walk'; readonly step: Step }
  | { readonly kind: 'zoom'; readonly factor: number }
  | { readonly kind: 'move'; readonly across: number; readonly up: number }
  | { readonly kind: 'choose' | 'leave' | 'whole' };
export interface Pressed {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

const PLAIN: Readonly<Record<string, PlotAction>> = {
  ArrowRight: { kind: 'walk', step: 'next' },
  ArrowLeft: { kind: 'walk', step: 'previous' },
  ArrowDown: { kind: 'walk', step: 'next set' },
  ArrowUp: { kind: 'walk', step: 'previous set' },
  Home: { kind: 'walk', step: 'first' },
  End: { kind: 'walk', step: 'last' },
  Enter: { kind: 'choose' },
  ' ': { kind: 'choose' },
  Escape: { kind: 'leave' },
  '0': { kind: 'whole' },
};
const ZOOM: Readonly<Record<string, number>> = { '+': 1.5, '=': 1.5, '-': 1 / 1.5, _: 1 / 1.5 };
const MOVES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [-1, 0],
  ArrowLeft: [1, 0],
  ArrowDown: [0, -1],
  ArrowUp: [0, 1],
};

/** What a key does on the plot; null leaves it to the browser. */
export function actionOf({ key, shiftKey, ctrlKey, metaKey, altKey }: Pressed): PlotAction | null {
  if (ctrlKey || metaKey || altKey) return null;
  const factor = ZOOM[key];
  if (factor !== undefined) return { kind: 'zoom', factor };
  const move = shiftKey ? MOVES[key] : undefined;
  if (move !== undefined) return { kind: 'move', across: move[0], up: move[1] };
  return PLAIN[key] ?? null;
}
