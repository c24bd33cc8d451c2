import { z } from 'zod';
import { INCOMING_ENERGIES } from '../domain/slip/attenuation.generated.ts';
import type { RecastRow } from '../domain/slip/recast-verdict.ts';
import type { SubstrateReading } from '../domain/slip/substrate.ts';
import { id, shortText } from './common.ts';
import { consistency, fractionEstimate } from './slip-estimate.ts';
import { analysedRef, basis } from './slip-reading.ts';

const number = z.number();
const above = number.positive('needs to be above 0');

export const recastRequest = basis
  .extend({
    paint: analysedRef,
    /** Clays to compare with: body, slip. */
    clays: z.array(analysedRef).min(1).max(10),
    /** Oxides taken out with the lead; null takes the usual ores and colourants. */
    added: z.array(z.string().max(20)).max(60).nullable().default(null),
  })
  .meta({ id: 'RecastRequest' });
const recastRow = z.object({
  oxide: z.string(),
  paint: number,
  clay: number,
  ratio: number,
  sigma: number.nullable(),
  df: number.nullable(),
}) satisfies z.ZodType<RecastRow>;
export const recastAnswer = z
  .object({
    paint: z.string(),
    /** The oxides taken out when none are named. */
    usual: z.array(z.string()),
    clays: z.array(
      z.object({
        clay: z.string(),
        /** Why this clay cannot be compared with; null when it can. */
        refusal: z.string().nullable(),
        removed: z.array(z.string()),
        leftOut: z.array(z.string()),
        rows: z.array(recastRow),
        verdict: z
          .object({
            kind: z.enum(['lead alone', 'added silica', 'less silica', 'another clay', 'untold']),
            common: number.nullable(),
            addedSilica: number.nullable(),
            addedSilicaSigma: number.nullable(),
            consistency: consistency.nullable(),
            sentence: z.string(),
          })
          .nullable(),
      }),
    ),
  })
  .meta({ id: 'RecastAnswer' });

const angle = number.gt(0, 'an angle lies above 0°').lte(90, 'an angle is at most 90°');
export const depthRequest = basis
  .extend({
    paint: analysedRef,
    slip: analysedRef.nullable().default(null),
    /** µm. */
    thickness: above.max(100_000),
    /** g/cm³. */
    density: above.max(25),
    /** keV; one of the energies of the table. */
    incoming: number.refine((energy) => INCOMING_ENERGIES.includes(energy), {
      error: `the beam energy needs to be one of ${INCOMING_ENERGIES.join(', ')} keV`,
    }),
    /** Degrees from the surface. */
    inAngle: angle.default(45),
    outAngle: angle.default(45),
    /** Beam of an electron microscope, keV; null leaves that depth out. */
    electrons: above.max(100).nullable().default(null),
  })
  .meta({ id: 'ReadingDepthRequest' });
const xrayLine = z.object({
  element: z.string(),
  shell: z.enum(['K', 'L', 'M']),
  energy: number,
  edge: number,
});
const reading = z.object({
  oxide: z.string(),
  transmission: number,
  substrateShare: number,
  slipWeight: number,
  reads: z.enum(['paint', 'mostly paint', 'both', 'mostly slip']),
}) satisfies z.ZodType<SubstrateReading>;
export const depthAnswer = z
  .object({
    paint: z.string(),
    slip: z.string().nullable(),
    depths: z.array(z.object({ oxide: z.string(), line: xrayLine, chi: number, depth99: number })),
    /** With the paint taken as read; null without a slip. */
    readings: z.array(reading).nullable(),
    /** The paint with the slip drawn off line by line; null where that is refused, and without a slip. */
    corrected: z
      .object({
        oxides: z.record(z.string(), number),
        readings: z.array(reading),
        rounds: number,
        warnings: z.array(z.string()),
      })
      .nullable(),
    correctionRefusal: z.string().nullable(),
    electrons: z
      .object({
        range: number,
        lines: z.array(z.object({ oxide: z.string(), line: xrayLine, depth: number })),
      })
      .nullable(),
    warnings: z.array(z.string()),
  })
  .meta({ id: 'ReadingDepthAnswer' });

const tile = z.object({
  label: shortText,
  thickness: above.max(100_000),
  thicknessSigma: number.min(0),
  f: number.min(0).max(1),
  sigma: above.max(1),
});
export const uptakeRequest = z
  .object({
    tiles: z.array(tile).max(1_000),
    law: z.enum(['dissolved layer', 'seen through']).default('dissolved layer'),
    /** Paints of known thickness, µm, to which the law is applied. */
    apply: z
      .array(
        z.object({
          specimen: id.nullable().default(null),
          label: shortText,
          thickness: above.max(100_000),
          sigma: number.min(0).default(0),
        }),
      )
      .max(5_000)
      .default([]),
  })
  .meta({ id: 'UptakeRequest' });
export const uptakeAnswer = z
  .object({
    uptake: z.object({
      law: z.enum(['dissolved layer', 'seen through']),
      reason: z.string(),
      depth: number,
      low: number,
      high: number,
      logSigma: number,
      scatter: number,
      df: number.nullable(),
      n: number,
      thicknesses: z.tuple([number, number]),
      consistency,
      tiles: z.array(tile.extend({ expected: number, z: number })),
      warnings: z.array(z.string()),
    }),
    applied: z.array(
      z.object({ specimen: z.string().nullable(), label: z.string(), estimate: fractionEstimate }),
    ),
  })
  .meta({ id: 'UptakeAnswer' });

export type RecastRequest = z.infer<typeof recastRequest>;
export type RecastAnswer = z.infer<typeof recastAnswer>;
export type DepthRequest = z.infer<typeof depthRequest>;
export type DepthAnswer = z.infer<typeof depthAnswer>;
export type UptakeRequest = z.infer<typeof uptakeRequest>;
export type UptakeAnswer = z.infer<typeof uptakeAnswer>;
