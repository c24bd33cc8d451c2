import type { Sample } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import type { DrawOffOptions } from './mixing.ts';
import { drawOffSample } from './sample.ts';
import type { SlipState } from './slip-state.ts';
import type { Analysed, FractionEstimate } from './types.ts';

/** The slip of one sample, and how much of it there is. */
export interface SlipOf {
  readonly slip: Analysed;
  readonly estimate: Pick<FractionEstimate, 'f' | 'kind' | 'cannotTell'>;
}

/** Samples after drawing off what could be, with the state of each, and why some keep their slip. */
export interface DrawnOffMany {
  readonly samples: readonly Sample[];
  readonly states: readonly SlipState[];
  readonly keptIn: readonly { readonly id: string; readonly label: string; readonly reason: string }[];
}

/**
 * Draws the slip off many samples, each by its own fraction, so that references too are compared as paint without
 * slip. A sample without slip or fraction, or from which it cannot be drawn, keeps its slip and says why. Order kept.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 0.5, sigmaBasis: 'stated', resolution: null })
 * sherd = (id) => ({ id, label: id, group: 'g', role: 'reference', measured: 'paint', spots: 1, rawTotal: 99, amounts: { PbO: of(45), SiO2: of(55) } })
 * slip = { label: 'S', spots: 1, amounts: { PbO: of(0), SiO2: of(100) } }
 * found = drawOffMany([sherd('a'), sherd('b')], { a: { slip, estimate: { f: 0.25, kind: 'thickness', cannotTell: null } } })
 * found.samples[0].amounts.PbO.value // 60
 * found.keptIn // [{ id: 'b', reason: 'No slip fraction is known for it' }]
 */
export function drawOffMany(
  samples: readonly Sample[],
  slips: Readonly<Record<string, SlipOf>>,
  options: DrawOffOptions = {},
): DrawnOffMany {
  const keptIn: { id: string; label: string; reason: string }[] = [];
  const keep = (sample: Sample, reason: string) => {
    keptIn.push({ id: sample.id, label: sample.label, reason });
    return { sample, state: { kind: 'in' } as SlipState };
  };
  const done = samples.map((sample) => {
    const own = slips[sample.id];
    if (!own) return keep(sample, 'No slip fraction is known for it');
    const { f, kind, cannotTell } = own.estimate;
    if (cannotTell) return keep(sample, cannotTell);
    try {
      const drawn = drawOffSample(sample, own.slip, { ...options, f });
      return { sample: drawn.sample, state: { kind: 'out', f, from: kind } as SlipState };
    } catch (error) {
      if (error instanceof RequirementError) return keep(sample, error.message);
      throw error;
    }
  });
  return { samples: done.map((d) => d.sample), states: done.map((d) => d.state), keptIn };
}
