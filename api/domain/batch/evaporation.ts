import { RequirementError } from '../requirement.ts';
import type { Span } from './types.ts';

/** Loss of PbO from melts of 54–99.8 wt% PbO at 900 °C, mg/cm² per hour: Preston & Turner 1935. */
const LOSS_AT_900: Span = { low: 0.1, high: 11.6 };

/** A paint layer as it lies on the tile. */
export interface PaintLayer {
  /** Fired paint on the tile, mg/cm². */
  readonly milligrams: number;
  /** wt% PbO of the paint before loss. */
  readonly leadOxide: number;
  /** Hours near the peak. */
  readonly hours: number;
  readonly celsius: number;
}

export interface EvaporationOutlook {
  /** Share of the layer's PbO, 0–1. */
  readonly share: Span;
  readonly words: string;
}

/**
 * How much of a layer's lead oxide could leave, from published losses at 900 °C: a check on plausibility, not a
 * prediction. The share is capped at all of it. Throws on a layer, lead or time that is not above zero.
 * Source: Preston & Turner 1935, 0.10 to 11.6 mg/cm²/h for melts of 54 to 99.8 wt% PbO at 900 °C.
 * @example
 * evaporationOutlook({ milligrams: 20, leadOxide: 50, hours: 1, celsius: 900 }).share // { low: 0.01, high: 1 }
 */
export function evaporationOutlook(layer: PaintLayer): EvaporationOutlook {
  const { milligrams, leadOxide, hours, celsius } = layer;
  if (!(milligrams > 0 && leadOxide > 0 && leadOxide <= 100 && hours > 0))
    throw new RequirementError('an evaporation check needs mg/cm² of paint, wt% PbO and hours above zero');
  const lead = (milligrams * leadOxide) / 100;
  const share = (rate: number) => Math.min(1, (rate * hours) / lead);
  const cooler = celsius < 900 ? ` At ${celsius} °C less leaves than that.` : '';
  const hotter = celsius > 900 ? ` At ${celsius} °C more may leave than that.` : '';
  const outside = leadOxide < 54 ? ' The paint holds less lead than the melts measured: it loses less.' : '';
  return {
    share: { low: share(LOSS_AT_900.low), high: share(LOSS_AT_900.high) },
    words: `Melts of 54 to 99.8 wt% PbO lost 0.10 to 11.6 mg/cm² an hour at 900 °C (Preston & Turner 1935).${cooler}${hotter}${outside} A check on plausibility only.`,
  };
}

/**
 * Milligrams of paint on a square centimetre from its thickness (µm) and density (g/cm³).
 * @example
 * layerMass(50, 4.5) // 22.5
 */
export function layerMass(micrometres: number, density: number): number {
  if (!(micrometres > 0 && density > 0))
    throw new RequirementError(
      `a layer needs a thickness and a density above zero; found ${micrometres} and ${density}`,
    );
  return micrometres * density * 0.1;
}
