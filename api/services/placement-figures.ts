import { and, eq } from 'drizzle-orm';
import { placement } from '../../db/schema/schema.ts';
import type { ComparisonData } from '../contract/comparison-data.ts';
import type { ComparisonText, FigureFile, FigureLook } from '../contract/figure.ts';
import type { Comparison, ComparisonRequest } from '../contract/placement.ts';
import { comparisonText } from '../export/comparison-text.ts';
import { type DrawnFile, drawFigureFile } from '../export/figure-file.ts';
import { type Caller, requireStudy } from './access.ts';
import { compare } from './comparison.ts';
import { readComparisonData } from './comparison-data.ts';
import { sourcesOf } from './comparison-sources.ts';
import { found } from './failure.ts';
import { takingPart } from './taking-part.ts';
import { VERSION } from './version.ts';

export interface Kept {
  readonly result: Comparison;
  /** What it was made from; read from the study where the placement was kept without. */
  readonly data: ComparisonData;
  readonly frozen: boolean;
  readonly version: string;
  readonly name: string;
  readonly note: string;
  readonly createdAt: string;
}

/** A placement with everything it was made from. */
export async function readKept(caller: Caller, studyId: string, placementId: string): Promise<Kept> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db
    .select()
    .from(placement)
    .where(and(eq(placement.studyId, studyId), eq(placement.id, placementId)));
  const { result, data, version, name, note, createdAt } = found(row, 'the placement');
  const kept = result as Comparison;
  const read = data ?? (await readComparisonData(caller, studyId, kept.request));
  return {
    ...{ result: kept, data: takingPart(read as ComparisonData, kept), frozen: data !== null },
    ...{ version, name, note },
    createdAt: createdAt.toISOString(),
  };
}

/** One figure of a placement that was kept. */
export async function placementFigure(
  caller: Caller,
  studyId: string,
  { placementId, file, look }: { placementId: string; file: FigureFile; look: FigureLook },
): Promise<DrawnFile> {
  const { result } = await readKept(caller, studyId, placementId);
  return drawFigureFile(result, file, look);
}

/** Captions, methods and citations of a placement that was kept. */
export async function placementText(
  caller: Caller,
  studyId: string,
  { placementId, look }: { placementId: string; look: FigureLook },
): Promise<ComparisonText> {
  return textOf(await readKept(caller, studyId, placementId), look);
}

export const textOf = ({ result, data, version }: Kept, look: FigureLook): ComparisonText =>
  comparisonText(result, { look, version, sources: sourcesOf(data) });

export interface ComparisonOrder {
  readonly comparison: ComparisonRequest;
  readonly look: FigureLook;
}

/** One figure of a comparison that is not kept. */
export async function comparisonFigure(
  caller: Caller,
  studyId: string,
  { comparison, look, file }: ComparisonOrder & { readonly file: FigureFile },
): Promise<DrawnFile> {
  return drawFigureFile(await compare(caller, studyId, comparison), file, look);
}

/** Captions, methods and citations of a comparison that is not kept. */
export async function textOfComparison(
  caller: Caller,
  studyId: string,
  { comparison, look }: ComparisonOrder,
): Promise<ComparisonText> {
  const result = await compare(caller, studyId, comparison);
  const sources = sourcesOf(await readComparisonData(caller, studyId, comparison));
  return comparisonText(result, { look, version: VERSION, sources });
}
