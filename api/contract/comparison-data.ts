import { z } from 'zod';
import { MEASURED, UNCERTAINTY_BASES, UNITS } from '../domain/composition/types.ts';
import { id } from './common.ts';

const words = z.string().max(20_000);
const reportedValue = z.object({
  analyte: z.string().max(40),
  value: z.number().nullable(),
  unit: z.enum(UNITS),
  uncertainty: z.number().nullable(),
  basis: z.enum(UNCERTAINTY_BASES).nullable(),
  belowDetection: z.boolean(),
  limit: z.number().nullable(),
  resolution: z.number().nullable(),
});

export const comparedGroup = z.object({
  id,
  name: z.string().min(1).max(200),
  period: words,
  place: words,
  source: words,
  doi: words,
  notes: words,
  position: z.number().int(),
});
export const comparedSpecimen = z.object({
  id,
  label: z.string().min(1).max(200),
  catalogueNumber: words,
  kind: z.enum(['sherd', 'replica', 'material']),
  group: id.nullable(),
  notes: words,
});
export const comparedAnalysis = z.object({
  id,
  specimen: id,
  measured: z.enum(MEASURED),
  technique: z.string().max(60).nullable(),
  /** What is assumed of the technique where no uncertainty is stated. */
  relativeError: z.number().nullable(),
  laboratory: words,
  instrument: words,
  date: words.nullable(),
  source: words,
  doi: words,
  spot: words,
  note: words,
  reported: z.array(reportedValue).max(200),
});

/** Everything a comparison is made from, as reported, in the order in which it is read. */
export const comparisonData = z.object({
  groups: z.array(comparedGroup),
  specimens: z.array(comparedSpecimen),
  analyses: z.array(comparedAnalysis),
});
export type ComparedGroup = z.infer<typeof comparedGroup>;
export type ComparedSpecimen = z.infer<typeof comparedSpecimen>;
export type ComparedAnalysis = z.infer<typeof comparedAnalysis>;
export type ComparisonData = z.infer<typeof comparisonData>;
