import type { Air, AirStage, Bounded, CurvePoint } from '../domain/firing/types.ts';

export interface OpenAir {
  readonly air: Air;
  readonly from: number;
}

/** One channel of a log, or the hottest channel of one of several firings. */
export interface FiringChannel {
  readonly name: string;
  /** Thinned, in order of time. */
  readonly points: readonly CurvePoint[];
  readonly spikes?: readonly CurvePoint[];
  readonly peak?: (Bounded & { readonly seconds: number }) | null;
}

/** Times are seconds since the fire was lit. */
export interface FiringCurveData {
  readonly id: string;
  readonly name: string;
  readonly stages: readonly AirStage[];
  /** Air whose end nobody noted: told, and not drawn. */
  readonly open?: OpenAir | null;
  /** Empty where only hand readings were taken. */
  readonly curves: readonly FiringChannel[];
  readonly gaps?: readonly { readonly from: number; readonly to: number }[];
  readonly readings: readonly {
    readonly seconds: number;
    readonly bounds: Bounded;
    readonly where: string;
  }[];
  /** Temperatures worth a line across, °C. */
  readonly marks: readonly number[];
}

/** What of a firing its curve is drawn from. */
export interface DrawnFiring {
  readonly id: string;
  readonly name: string;
  readonly stages: readonly AirStage[];
  readonly open?: OpenAir | null;
  readonly thresholds: readonly number[];
  readonly readings: readonly {
    readonly at: number | null;
    readonly where: string;
    readonly bounds: Bounded | null;
  }[];
  readonly log: {
    readonly gaps: readonly { readonly from: number; readonly to: number }[];
    readonly curves: readonly {
      readonly name: string;
      readonly points: readonly CurvePoint[];
      readonly spikes: readonly CurvePoint[];
    }[];
  } | null;
  readonly summary: {
    readonly channels: readonly {
      readonly name: string;
      readonly peak: (Bounded & { readonly seconds: number }) | null;
    }[];
  } | null;
}

/** One firing: its log channel by channel, its readings by hand that have a time, its stages and chosen temperatures. */
export function firingCurveData(firing: DrawnFiring): FiringCurveData {
  const { name, stages, open = null, thresholds, log, summary } = firing;
  const curves = (log?.curves ?? []).map((curve) => ({
    ...curve,
    peak: summary?.channels.find((channel) => channel.name === curve.name)?.peak ?? null,
  }));
  const readings = firing.readings.flatMap(({ at, where, bounds }) =>
    at === null || bounds === null ? [] : [{ seconds: at, bounds, where }],
  );
  return {
    ...{ id: `curve-${firing.id}`, name, stages, open, curves, readings },
    ...{ gaps: log?.gaps ?? [], marks: thresholds },
  };
}

/** Several firings over one another: the hottest channel of each, under the name of its firing. */
export function comparedCurvesData(
  id: string,
  curves: readonly { readonly name: string; readonly points: readonly CurvePoint[] }[],
): FiringCurveData {
  const name = curves.map((one) => one.name).join(', ');
  return { id, name, curves, stages: [], readings: [], gaps: [], marks: [] };
}
