import type { Measured, ReportedValue } from '../domain/composition/types.ts';

/** The demo study as its generator gives it: invented, in an invented place; labels tie the parts together. */
export interface DemoStudy {
  readonly study: { readonly name: string; readonly place: string; readonly notes: string };
  readonly groups: readonly DemoGroup[];
  readonly specimens: readonly DemoSpecimen[];
  readonly analyses: readonly DemoAnalysis[];
}
export interface DemoGroup {
  readonly name: string;
  readonly period: string;
  readonly place: string;
  readonly source: string;
  readonly notes: string;
}
export interface DemoSpecimen {
  /** Unique in the study. */
  readonly label: string;
  readonly catalogueNumber: string;
  readonly kind: 'sherd' | 'replica' | 'material';
  /** Name of a group above; null when unassigned. */
  readonly group: string | null;
  readonly notes: string;
}
export interface DemoAnalysis {
  /** Label of a specimen above. */
  readonly specimen: string;
  readonly measured: Measured;
  /** Code of a technique; see api/services/lookups.ts. */
  readonly technique: string | null;
  readonly laboratory: string;
  readonly instrument: string;
  /** YYYY-MM-DD */
  readonly date: string | null;
  readonly source: string;
  readonly spot: string;
  readonly note: string;
  readonly reported: readonly ReportedValue[];
}
