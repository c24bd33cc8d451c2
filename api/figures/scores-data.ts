export interface ScoresPoint {
  readonly id: string;
  readonly label: string;
  readonly x: number;
  readonly y: number;
}
/** Semi-axes and angle (radians, anticlockwise from the first component) in score units. */
export interface ScoresEllipse {
  readonly centre: readonly [number, number];
  readonly semiAxes: readonly [number, number];
  readonly angle: number;
}
export interface ScoresGroup {
  readonly id: string;
  readonly name: string;
  /** Place in the study's order; colour and mark follow it. */
  readonly slot: number;
  readonly n: number;
  readonly points: readonly ScoresPoint[];
  readonly ellipse: ScoresEllipse | null;
}
export interface ScoresReplica extends ScoresPoint {
  readonly chosen: boolean;
  /** Where else it may lie, given what is uncertain. */
  readonly cloud?: readonly (readonly [number, number])[];
  readonly ellipse?: ScoresEllipse;
  /** Where it goes as something is varied (slip drawn off), from first to last. */
  readonly path?: readonly (readonly [number, number])[];
}
export interface ScoresData {
  /** Sets the ids inside the drawing apart from those of other figures on the page. */
  readonly id: string;
  readonly title: string;
  readonly components: readonly [number, number];
  /** Share of variance each of the two components explains, 0–1. */
  readonly explained: readonly [number, number];
  readonly groups: readonly ScoresGroup[];
  readonly replicas: readonly ScoresReplica[];
  /** Unit-free directions of the oxides; null hides them. */
  readonly loadings: readonly { readonly part: string; readonly x: number; readonly y: number }[] | null;
  /** Confidence level of the ellipses, 0–1. */
  readonly level: number;
  readonly naming: 'replicas' | 'chosen' | 'everything' | 'nothing';
  /** Part of the score plane shown; null shows everything. */
  readonly view: { readonly x: readonly [number, number]; readonly y: readonly [number, number] } | null;
}
