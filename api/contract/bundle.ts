import { z } from 'zod';
import { MAX_BUNDLE_BYTES } from './bundle-limits.ts';
import { id, instant, longText, name } from './common.ts';
import { comparison, comparisonRequest } from './placement.ts';

/** The placement inside a bundle: what was asked, what was answered, and by which version. */
export const bundledPlacement = z.object({
  name,
  note: longText,
  version: z.string().max(40),
  createdAt: instant,
  request: comparisonRequest,
  result: comparison,
});
export type BundledPlacement = z.infer<typeof bundledPlacement>;

export const bundleUpload = z.object({
  file: z
    .instanceof(File)
    .refine(
      ({ size }) => size <= MAX_BUNDLE_BYTES,
      `a bundle has at most ${MAX_BUNDLE_BYTES / 1024 / 1024} MB`,
    )
    .meta({ type: 'string', format: 'binary' }),
});

/** Where a bundle was brought in to. */
export const bundleTaken = z
  .object({
    study: id,
    placement: id,
    name: z.string(),
    /** How this version's numbers differ from those of another version's bundle; null where they are the same. */
    differs: z.string().nullable(),
    groups: z.number().int(),
    specimens: z.number().int(),
    analyses: z.number().int(),
  })
  .meta({ id: 'BundleTaken' });
export type BundleTaken = z.infer<typeof bundleTaken>;
