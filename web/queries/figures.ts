import type { FigureSheet } from '../../api/contract/figure.ts';
import type { SlipFigureFile, SlipFigureWish } from '../../api/contract/slip-figure.ts';
import type { TrialFigureFile, TrialFigureWish } from '../../api/contract/trial-figure.ts';
import { api } from '../client.ts';
import { refusalFrom } from '../problem.ts';

const { slip, trials } = api.studies[':study'];

/** A figure of what mattered, as a file. */
export async function trialFigure(
  study: string,
  file: TrialFigureFile,
  json: TrialFigureWish,
): Promise<Blob> {
  const got = await trials.figures[':file'].$post({ param: { study, file }, json });
  if (!got.ok) throw await refusalFrom(got);
  return got.blob();
}

/** The line that a paint and its slip lie on, as a file. */
export async function slipFigure(study: string, file: SlipFigureFile, json: SlipFigureWish): Promise<Blob> {
  const got = await slip.figures[':file'].$post({ param: { study, file }, json });
  if (!got.ok) throw await refusalFrom(got);
  return got.blob();
}

/** Where the curve of a firing lies as a file. */
export const firingFigureAddress = (
  study: string,
  firing: string,
  file: string,
  sheet: FigureSheet,
): string =>
  `/api/studies/${study}/firings/${firing}/figures/${file}?${new URLSearchParams({ format: sheet.format, width: String(sheet.width) })}`;

/** Where the curves of firings over one another lie as a file. */
export const comparedFigureAddress = (
  study: string,
  firings: readonly string[],
  { file, sheet }: { readonly file: string; readonly sheet: FigureSheet },
): string =>
  `/api/studies/${study}/firings/comparison/figures/${file}?${new URLSearchParams({ format: sheet.format, width: String(sheet.width), firings: firings.join(',') })}`;

/** Where a batch beside a replica lies as a file. */
export const batchFigureAddress = (
  study: string,
  { batch, replica }: { readonly batch: string; readonly replica: string },
  { file, sheet }: { readonly file: string; readonly sheet: FigureSheet },
): string =>
  `/api/studies/${study}/batches/${batch}/figures/${file}?${new URLSearchParams({ format: sheet.format, width: String(sheet.width), replica })}`;
