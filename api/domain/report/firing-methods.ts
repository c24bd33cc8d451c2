import { listInWords } from '../placement/words.ts';
import type { MethodReference } from './references.ts';

/** What of a firing its methods are written from. */
export interface FiringMethodsAbout {
  /** Of the log, one for each channel; none where there is no log. */
  readonly channels: readonly { readonly name: string; readonly tolerance: string }[];
  readonly readings: readonly ('thermocouple' | 'infrared')[];
  readonly version: string;
}

const IEC_60584: MethodReference = {
  key: 'IEC 60584-1',
  text: 'IEC 60584-1:2013. Thermocouples, part 1: EMF specifications and tolerances. International Electrotechnical Commission.',
  doi: '',
};

/**
 * How the temperatures of a firing were measured and bounded, as a paragraph: each sensor's tolerance, readings by
 * hand, spikes and thinning. `firingReferences` lists the standards it rests on.
 *
 * @example
 * const channel = { name: 'top', tolerance: 'type K, class 2 (IEC 60584-1): ± 2.5 °C or 0.75 % of the reading, whichever is greater' };
 * const said = firingMethods({ channels: [channel], readings: ['infrared'], version: '1' });
 * said.includes('top by type K, class 2 (IEC 60584-1)') // true
 * said.includes('one by infrared thermometer') // true
 */
export function firingMethods({ channels, readings, version }: FiringMethodsAbout): string {
  return [
    ...(channels.length > 0
      ? [
          `Temperatures were logged in ${channels.length === 1 ? 'one channel' : `${channels.length} channels`}: ${channels.map(({ name, tolerance }) => `${name} by ${tolerance}`).join('; ')}.`,
          'Bounds are the tolerance of the sensor and half a step of its last digit. Spikes are readings that no neighbour bears out; they are shown, and left out of peaks and times. For drawing, a long log is thinned; the highest and the lowest reading of every stretch are kept.',
        ]
      : []),
    ...(readings.length > 0 ? [handReadings(readings)] : []),
    `Computed with Nearsherd ${version}.`,
  ].join(' ');
}

function handReadings(readings: FiringMethodsAbout['readings']): string {
  const by = (kind: string) => readings.filter((one) => one === kind).length;
  const said = (n: number, words: string) => (n === 0 ? [] : [`${n === 1 ? 'one' : n} ${words}`]);
  const infrared = by('infrared');
  return [
    `Readings by hand: ${listInWords([...said(by('thermocouple'), 'by thermocouple'), ...said(infrared, 'by infrared thermometer')])}, each with what the stated error of its instrument leaves open.`,
    ...(infrared > 0
      ? [
          'Infrared readings were corrected from the emissivity set to that of the surface by Planck’s law at the stated wavelength.',
        ]
      : []),
  ].join(' ');
}

/**
 * The standards that the temperatures of a firing rest on.
 *
 * @example
 * firingReferences({ channels: [{ tolerance: 'type K, class 2 (IEC 60584-1): ± 2.5 °C' }] }).map((one) => one.key) // ['IEC 60584-1']
 * firingReferences({ channels: [] }) // []
 */
export function firingReferences({
  channels,
}: {
  readonly channels: readonly { readonly tolerance: string }[];
}): MethodReference[] {
  return channels.some(({ tolerance }) => tolerance.includes(IEC_60584.key)) ? [IEC_60584] : [];
}
