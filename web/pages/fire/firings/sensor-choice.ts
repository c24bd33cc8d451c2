import type { Sensor } from '../../../../api/domain/firing/types.ts';

/** Thermocouples as one chooses them from a list. */
export const SENSORS = [
  { id: 'unknown', label: 'Not known' },
  { id: 'K1', label: 'Type K, class 1' },
  { id: 'K2', label: 'Type K, class 2' },
  { id: 'N1', label: 'Type N, class 1' },
  { id: 'N2', label: 'Type N, class 2' },
  { id: 'stated', label: 'Error stated' },
] as const;
export type SensorChoice = (typeof SENSORS)[number]['id'];

/** What a maker states for a bare wire is seldom less. */
const FIRST_STATED = 5;

export function choiceOf(sensor: Sensor): SensorChoice {
  return sensor.kind === 'class' ? `${sensor.type}${sensor.class}` : sensor.kind;
}

export function sensorOf(choice: SensorChoice, stated = FIRST_STATED): Sensor {
  if (choice === 'unknown') return { kind: 'unknown' };
  if (choice === 'stated') return { kind: 'stated', celsius: stated };
  const type = choice.startsWith('K') ? 'K' : 'N';
  return { kind: 'class', type, class: choice.endsWith('1') ? 1 : 2 };
}
