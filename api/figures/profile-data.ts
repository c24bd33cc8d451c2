/** The spread of a ware group on one oxide, on the figure's own scale. */
export interface ProfileSpread {
  readonly low: number;
  readonly high: number;
  /** First quartile, median, third quartile; null with fewer than five sherds, where each is drawn instead. */
  readonly quartiles: readonly [number, number, number] | null;
  readonly each: readonly number[];
}
export interface ProfileRow {
  readonly oxide: string;
  readonly spread: ProfileSpread;
  /** One value a replica, in the order of `ProfileData.replicas`. */
  readonly values: readonly number[];
  /** Of the chosen replica: how many times the group's centre; null when no replica is chosen. */
  readonly factor: number | null;
  /** Of the chosen replica: share of the squared distance to the centre, 0–1. */
  readonly share: number | null;
}
export interface ProfileData {
  readonly id: string;
  readonly title: string;
  readonly group: { readonly name: string; readonly slot: number; readonly n: number };
  /** Multiples of the group's centre, or wt% of the oxides compared. */
  readonly basis: 'ratio' | 'amount';
  readonly rows: readonly ProfileRow[];
  readonly replicas: readonly { readonly id: string; readonly label: string; readonly chosen: boolean }[];
}
