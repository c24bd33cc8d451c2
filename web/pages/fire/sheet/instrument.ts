import type { Bounded, HandReading, Sensor } from '../../../../api/domain/firing/types.ts';

/** What temperatures are read by on this phone; remembered from one reading to the next. */
export interface Instrument {
  readonly kind: InstrumentKind;
  /** Stated error of a thermocouple, ± °C. */
  readonly stated: number;
  readonly micrometres: number;
  /** Emissivity the instrument is set to, and that of the surface with its bounds. */
  readonly set: number;
  readonly surface: Bounded;
  /** Accuracy as the maker states it: the greater of ± °C and ± % of the reading. */
  readonly accuracyCelsius: number;
  readonly accuracyPercent: number;
  readonly resolution: number;
}

export const KINDS = [
  { id: 'K1', label: 'Thermocouple K, class 1' },
  { id: 'K2', label: 'Thermocouple K, class 2' },
  { id: 'N1', label: 'Thermocouple N, class 1' },
  { id: 'N2', label: 'Thermocouple N, class 2' },
  { id: 'stated', label: 'Thermocouple, error stated' },
  { id: 'unknown', label: 'Thermocouple, class not known' },
  { id: 'infrared', label: 'Infrared thermometer' },
] as const;
export type InstrumentKind = (typeof KINDS)[number]['id'];

/** A start to be put right: no value for painted pottery is published that we know of, so the bounds are wide. */
export const FIRST: Instrument = {
  ...{ kind: 'K2', stated: 5, micrometres: 10, set: 0.95, resolution: 1 },
  surface: { value: 0.9, low: 0.75, high: 0.98 },
  ...{ accuracyCelsius: 2, accuracyPercent: 2 },
};

const sensors: Readonly<Record<Exclude<InstrumentKind, 'infrared' | 'stated'>, Sensor>> = {
  K1: { kind: 'class', type: 'K', class: 1 },
  K2: { kind: 'class', type: 'K', class: 2 },
  N1: { kind: 'class', type: 'N', class: 1 },
  N2: { kind: 'class', type: 'N', class: 2 },
  unknown: { kind: 'unknown' },
};

/** What was shown, with all that its error follows from. */
export function readingBy(instrument: Instrument, celsius: number): HandReading {
  const { kind, resolution } = instrument;
  if (kind === 'infrared') {
    const { set, surface: emissivity, micrometres, accuracyCelsius, accuracyPercent } = instrument;
    const accuracy = { celsius: accuracyCelsius, share: accuracyPercent / 100 };
    return { kind: 'infrared', celsius, resolution, set, emissivity, micrometres, accuracy };
  }
  const sensor: Sensor = kind === 'stated' ? { kind: 'stated', celsius: instrument.stated } : sensors[kind];
  return { kind: 'thermocouple', celsius, resolution, sensor };
}

const KEPT = 'nearsherd-instrument';

export function keptInstrument(): Instrument {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? '{}') as Partial<Instrument>;
    const known = KINDS.some((one) => one.id === kept.kind);
    return known ? { ...FIRST, ...kept } : FIRST;
  } catch {
    return FIRST;
  }
}

export function keepInstrument(instrument: Instrument): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(instrument));
  } catch {
    // A phone that keeps nothing only has it to choose again.
  }
}
