import type { SpecimenKind } from '../../../api/contract/specimen.ts';
import type { Measured } from '../../../api/domain/composition/types.ts';
import type { Choice } from '../../parts/Select.tsx';

/** What things are called on the pages. */
export const KIND_CHOICES: readonly Choice<SpecimenKind>[] = [
  { id: 'sherd', label: 'Sherd', hint: 'Ancient; part of a reference' },
  { id: 'replica', label: 'Replica', hint: 'A tile or pot of ours, set against the sherds' },
  { id: 'material', label: 'Material', hint: 'What a batch is weighed from' },
];
export const MEASURED_CHOICES: readonly Choice<Measured>[] = [
  { id: 'paint', label: 'Paint', hint: 'The dark decoration' },
  { id: 'slip', label: 'Slip', hint: 'The coat under the paint' },
  { id: 'body', label: 'Body', hint: 'The clay itself' },
  { id: 'whole', label: 'Whole', hint: 'All of it crushed together' },
];
export const kindWord = (kind: SpecimenKind) =>
  KIND_CHOICES.find((choice) => choice.id === kind)?.label ?? kind;
export const measuredWord = (measured: string) =>
  MEASURED_CHOICES.find((choice) => choice.id === measured)?.label ?? measured;
