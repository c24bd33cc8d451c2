import { CurveBuckets } from './curve-buckets.ts';
import { RateWindow, rateBetween } from './rate-window.ts';
import { SpikeFilter } from './spike-filter.ts';
import { TimeProfile } from './time-profile.ts';
import type { ChannelDigest, CurvePoint, LogChannel } from './types.ts';

/** Readings outside are no temperatures of a fire: an open circuit or a marker such as 9999. */
const COLDEST = -100;
const HOTTEST = 2000;
const KEPT_SPIKES = 200;

export interface ChannelOptions {
  readonly rateWindow: number;
  readonly plotPoints: number;
  readonly interval: number;
}

/** What one cell was. */
export type Reading = 'ok' | 'missing' | 'out-of-range';

/** One channel of a log, reading by reading. */
export class ChannelReducer {
  readonly #channel: LogChannel;
  readonly #curve: CurveBuckets;
  readonly #rates: RateWindow;
  readonly #time: TimeProfile;
  readonly #filter = new SpikeFilter();
  readonly #spikes: CurvePoint[] = [];
  #spikeCount = 0;
  #readings = 0;
  #peak: CurvePoint | null = null;
  #last: CurvePoint | null = null;
  #gaps: number[] = [];

  constructor(channel: LogChannel, options: ChannelOptions) {
    this.#channel = channel;
    this.#curve = new CurveBuckets(options.plotPoints, options.interval);
    this.#rates = new RateWindow(options.rateWindow);
    this.#time = new TimeProfile(channel.sensor);
  }

  /** A gap lies before the time given. */
  gapBefore(seconds: number): void {
    this.#gaps.push(seconds);
  }

  add(seconds: number, celsius: number): { reading: Reading; spikes: readonly CurvePoint[] } {
    if (Number.isNaN(celsius)) return { reading: 'missing', spikes: [] };
    if (!(celsius > COLDEST && celsius < HOTTEST)) return { reading: 'out-of-range', spikes: [] };
    this.#readings++;
    const { kept, spikes } = this.#filter.add({ seconds, celsius });
    this.#take(kept, spikes);
    return { reading: 'ok', spikes };
  }

  finish(resolution: number): { digest: ChannelDigest; spikes: readonly CurvePoint[] } {
    const { kept, spikes } = this.#filter.end();
    this.#take(kept, spikes);
    const error = { sensor: this.#channel.sensor, resolution };
    const { rise, fall } = this.#rates;
    return {
      digest: {
        channel: this.#channel,
        readings: this.#readings,
        spikes: this.#spikeCount,
        resolution,
        first: this.#curve.first,
        last: this.#curve.last,
        peak: this.#peak,
        timeByTemperature: this.#time.result(),
        fastestHeating: rise && rateBetween(rise.from, rise.to, error),
        fastestCooling: fall && rateBetween(fall.from, fall.to, error),
        curve: this.#curve.points(),
        spikePoints: this.#spikes,
      },
      spikes,
    };
  }

  #take(kept: readonly CurvePoint[], spikes: readonly CurvePoint[]): void {
    this.#spikeCount += spikes.length;
    for (const spike of spikes) if (this.#spikes.length < KEPT_SPIKES) this.#spikes.push(spike);
    for (const point of kept) this.#good(point);
  }

  #good(point: CurvePoint): void {
    const { seconds, celsius } = point;
    let gap = false;
    while (this.#gaps.length > 0 && this.#gaps[0]! <= seconds) {
      gap = true;
      this.#gaps.shift();
    }
    if (gap) this.#rates.reset();
    if (this.#last)
      this.#time.add(this.#last.celsius, celsius, { seconds: seconds - this.#last.seconds, gap });
    this.#rates.add(seconds, celsius);
    this.#curve.add(seconds, celsius);
    if (!this.#peak || celsius > this.#peak.celsius) this.#peak = point;
    this.#last = point;
  }
}
