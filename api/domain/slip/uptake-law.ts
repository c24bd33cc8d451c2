/** How the slip fraction falls with the thickness t of the paint. `depth` is in the unit of t (µm). */
export type UptakeLaw = 'dissolved layer' | 'seen through';

interface Law {
  /** f at thickness t for depth d. */
  readonly fraction: (t: number, d: number) => number;
  /** Rise of f with ln d; its fall with ln t is the same, since f depends on t/d alone. */
  readonly slope: (t: number, d: number) => number;
  readonly reason: string;
}

/** The laws and why each is plausible. Both hold f = 1 at no thickness and f → 0 under a thick paint. */
export const UPTAKE_LAWS: Readonly<Record<UptakeLaw, Law>> = {
  'dissolved layer': {
    fraction: (t, d) => d / (d + t),
    slope: (t, d) => (d * t) / (d + t) ** 2,
    reason:
      'In one firing the molten paint dissolves a layer of slip of one depth d, whatever its own thickness t, and stirs it in evenly: f = d/(d + t). For spot analyses of the paint (SEM-EDS, EPMA).',
  },
  'seen through': {
    fraction: (t, d) => Math.exp(-t / d),
    slope: (t, d) => (t / d) * Math.exp(-t / d),
    reason:
      'The beam fades on its way through the paint, so the share of the reading from beneath is f = exp(−t/d), d one attenuation length for all oxides taken together. For readings through the surface (XRF).',
  },
};
