import { z } from 'zod';
import type {
  GroupModel,
  GroupSpread,
  Member,
  ModelSettings,
  ReferenceModel,
} from '../domain/reference/types.ts';
import { DEFAULT_MODEL } from '../domain/reference/types.ts';
import { id } from './common.ts';

const numbers = z.array(z.number());
const matrix = z.array(numbers);

export const covarianceChoice = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('auto') }),
  z.object({ kind: z.literal('sample') }),
  z.object({ kind: z.literal('shrinkage'), target: z.enum(['ledoit-wolf', 'oas']) }),
  z.object({ kind: z.literal('components'), count: z.number().int().min(1).max(50) }),
]);
const replacement = z.object({
  fraction: z.number().gt(0).lte(1).default(DEFAULT_MODEL.replacement.fraction),
  limits: z.record(z.string(), z.number().positive()).default({}),
});

export const modelSettings = z
  .object({
    groups: z.array(id).min(1, 'choose at least one ware group').max(100),
    parts: z
      .array(z.string())
      .min(2, 'a comparison needs at least two oxides')
      .max(60)
      .nullable()
      .default(null),
    scale: z.enum(['log-ratio', 'log10', 'standardised']).default(DEFAULT_MODEL.scale),
    covariance: covarianceChoice.default({ kind: 'auto' }),
    replacement: replacement.default({ fraction: DEFAULT_MODEL.replacement.fraction, limits: {} }),
  })
  .meta({ id: 'ModelSettings' }) satisfies z.ZodType<ModelSettings>;

const spread = z
  .object({
    method: z.enum(['sample', 'ledoit-wolf', 'oas', 'components']),
    p: z.number().int(),
    explanation: z.string(),
    limit: z.number().nullable(),
    shrinkage: z.number().nullable(),
    axes: matrix,
    covariance: matrix,
    inverseCholesky: numbers,
  })
  .meta({ id: 'GroupSpread' }) satisfies z.ZodType<GroupSpread>;

const groupModel = z
  .object({
    id: z.string(),
    name: z.string(),
    n: z.number().int(),
    mean: numbers,
    centre: numbers,
    deviation: numbers.nullable(),
    spread: spread.nullable(),
    refusal: z.string().nullable(),
    warnings: z.array(z.string()),
    memberIds: z.array(z.string()),
    memberD2: numbers.nullable(),
    memberOff: numbers.nullable(),
    scoreMean: numbers,
    scoreCovariance: matrix.nullable(),
  })
  .meta({ id: 'GroupModel' }) satisfies z.ZodType<GroupModel>;

const member = z
  .object({
    id: z.string(),
    label: z.string(),
    group: z.string(),
    parts: numbers,
    scores: numbers,
  })
  .meta({ id: 'Member' }) satisfies z.ZodType<Member>;

export const referenceModel = z
  .object({
    settings: modelSettings,
    parts: z.array(z.string()),
    fallenOut: z.array(
      z.object({
        oxide: z.string(),
        because: z.enum(['not measured', 'constant', 'no detection limit', 'not chosen']),
        specimens: z.array(z.string()),
      }),
    ),
    leftOut: z.array(z.object({ sample: z.string(), label: z.string(), reason: z.string() })),
    warnings: z.array(z.string()),
    replaced: z.array(z.object({ sample: z.string(), oxide: z.string(), limit: z.number(), by: z.number() })),
    limits: z.record(z.string(), z.number()),
    mean: numbers,
    sd: numbers.nullable(),
    pca: z.object({ eigenvalues: numbers, explained: numbers, loadings: matrix }),
    groups: z.array(groupModel),
    members: z.array(member),
  })
  .meta({ id: 'ReferenceModel' }) satisfies z.ZodType<ReferenceModel>;
