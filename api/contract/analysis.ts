import { z } from 'zod';
import type {
  Amounts,
  NormalisationSettings,
  NormalisationStep,
  NormalisedAnalysis,
  ReportedValue,
} from '../domain/composition/types.ts';
import { DEFAULT_NORMALISATION, MEASURED, UNCERTAINTY_BASES, UNITS } from '../domain/composition/types.ts';
import { direction, doi, id, instant, longText, page, paging, partialDate, shortText } from './common.ts';

const figure = z.number().nullable();
export const unit = z.enum(UNITS);
export const measured = z.enum(MEASURED);

export const reportedValue = z
  .object({
    analyte: z.string().trim().min(1).max(20),
    value: figure,
    unit,
    uncertainty: z.number().min(0).nullable(),
    basis: z.enum(UNCERTAINTY_BASES).nullable(),
    belowDetection: z.boolean(),
    limit: z.number().min(0).nullable(),
    resolution: z.number().positive().nullable(),
  })
  .meta({ id: 'ReportedValue' }) satisfies z.ZodType<ReportedValue>;

/** What a person or a program writes: only analyte, value and unit are asked for. */
export const newReportedValue = z
  .object({
    analyte: z.string().trim().min(1).max(20),
    value: figure.default(null),
    unit: unit.default('wt%'),
    uncertainty: z.number().min(0).nullable().default(null),
    basis: z.enum(UNCERTAINTY_BASES).nullable().default(null),
    belowDetection: z.boolean().default(false),
    limit: z.number().min(0).nullable().default(null),
    resolution: z.number().positive().nullable().default(null),
  })
  .meta({ id: 'NewReportedValue' });

export const newAnalysis = z
  .object({
    specimen: id,
    /** Zone of the specimen, where it is a tile, that was measured. */
    zone: id.nullable().default(null),
    measured,
    /** Code of a technique from `GET /lookups`; null when unknown. */
    technique: z.string().max(40).nullable().default(null),
    laboratory: shortText.default(''),
    instrument: longText.default(''),
    date: partialDate.nullable().default(null),
    source: longText.default(''),
    doi: doi.default(''),
    spot: shortText.default(''),
    note: longText.default(''),
    reported: z.array(newReportedValue).min(1, 'an analysis needs at least one value').max(150),
  })
  .meta({ id: 'NewAnalysis' });
export const analysisChange = z
  .object({
    zone: id.nullable(),
    measured,
    technique: z.string().max(40).nullable(),
    laboratory: shortText,
    instrument: longText,
    date: partialDate.nullable(),
    source: longText,
    doi,
    spot: shortText,
    note: longText,
    /** Replaces the whole list: a misread figure is corrected, never normalised in place. What was first entered is kept. */
    reported: z.array(newReportedValue).min(1).max(150),
  })
  .partial()
  .meta({ id: 'AnalysisChange' });

export const analysis = z
  .object({
    id,
    specimen: id,
    specimenLabel: z.string(),
    zone: id.nullable(),
    zoneLabel: z.string().nullable(),
    measured,
    technique: z.string().nullable(),
    laboratory: z.string(),
    instrument: z.string(),
    date: z.string().nullable(),
    source: z.string(),
    doi: z.string(),
    spot: z.string(),
    note: z.string(),
    reported: z.array(reportedValue),
    /** What was entered first, once a figure has been corrected; null while nothing has. */
    firstReported: z.array(reportedValue).nullable(),
    /** The import that brought it, and the row of the file; null when entered by hand. */
    import: id.nullable(),
    row: z.number().int().nullable(),
    createdAt: instant,
    updatedAt: instant,
  })
  .meta({ id: 'Analysis' });
export const analysisPage = page(analysis);
export const analysisQuery = paging.extend({
  specimen: id.optional(),
  group: z.union([id, z.literal('none')]).optional(),
  measured: measured.optional(),
  /** Only those made at a zone of a tile. */
  zone: z.literal('any').optional(),
  search: shortText.optional(),
  sort: z.enum(['specimen', 'measured', 'technique', 'laboratory', 'date', 'createdAt']).default('specimen'),
  direction: direction.default('asc'),
});

export const normalisationSettings = z
  .object({
    iron: z.enum(['Fe2O3', 'FeO']).default(DEFAULT_NORMALISATION.iron),
    manganese: z.enum(['MnO', 'MnO2', 'Mn2O3', 'Mn3O4']).default(DEFAULT_NORMALISATION.manganese),
    copper: z.enum(['CuO', 'Cu2O']).default(DEFAULT_NORMALISATION.copper),
    lead: z.enum(['PbO', 'PbO2', 'Pb3O4']).default(DEFAULT_NORMALISATION.lead),
    sulfur: z.enum(['SO3', 'S']).default(DEFAULT_NORMALISATION.sulfur),
    volatileFree: z.boolean().default(DEFAULT_NORMALISATION.volatileFree),
  })
  .meta({ id: 'NormalisationSettings' }) satisfies z.ZodType<NormalisationSettings>;

const amount = z
  .object({
    value: figure,
    limit: figure,
    sigma: figure,
    sigmaBasis: z.enum(['stated', 'assumed', 'spots']).nullable(),
    sigmaDf: z.number().nullable().optional(),
    resolution: figure,
  })
  .meta({ id: 'Amount' });
export const amounts = z.record(z.string(), amount) satisfies z.ZodType<Amounts>;

const normalisationStep = z.object({
  analyte: z.string(),
  oxide: z.string(),
  what: z.string(),
  before: z.object({ value: figure, unit }),
  factor: z.number(),
  after: figure,
}) satisfies z.ZodType<NormalisationStep>;
export const normalisedAnalysis = z
  .object({
    amounts,
    closed: amounts,
    rawTotal: z.number(),
    total: z.object({ judgement: z.enum(['low', 'usual', 'high', 'unknown']), message: z.string() }),
    steps: z.array(normalisationStep),
    warnings: z.array(z.string()),
  })
  .meta({ id: 'NormalisedAnalysis' }) satisfies z.ZodType<NormalisedAnalysis>;

export type NewReportedValue = z.infer<typeof newReportedValue>;
export type NewAnalysis = z.infer<typeof newAnalysis>;
export type AnalysisChange = z.infer<typeof analysisChange>;
export type AnalysisQuery = z.infer<typeof analysisQuery>;
export type Normalised = z.infer<typeof normalisedAnalysis>;
export type Analysis = z.infer<typeof analysis>;
