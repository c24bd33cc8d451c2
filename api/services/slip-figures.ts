import { and, eq } from 'drizzle-orm';
import { visibleSpecimen } from '../../db/schema/schema.ts';
import type { FigureForm, FigureWords } from '../contract/figure.ts';
import { SLIP_FIGURES, type SlipFigureFile, type SlipFigureOrder } from '../contract/slip-figure.ts';
import { slipMethods, slipReferences } from '../domain/report/slip-methods.ts';
import { RequirementError } from '../domain/requirement.ts';
import { slipFor } from '../domain/slip/slip-source.ts';
import { type DrawnFile, drawPrepared } from '../export/figure-file.ts';
import { prepareMixingLine } from '../export/slip-figures.ts';
import type { MixingSides } from '../figures/mixing-data.ts';
import { type Caller, requireStudy } from './access.ts';
import { captionsOf } from './figure-captions.ts';
import { readMeasured, readSlips } from './slip-samples.ts';
import { VERSION } from './version.ts';

/** The line that a paint and its slip lie on, as a file. */
export async function slipFigure(
  caller: Caller,
  studyId: string,
  { file, order }: { readonly file: SlipFigureFile; readonly order: SlipFigureOrder },
): Promise<DrawnFile> {
  const form = file.split('.')[1] as FigureForm;
  const { oxides = null, sheet } = order;
  const figure = prepareMixingLine(await sidesOf(caller, studyId, order), { oxides, sheet });
  return drawPrepared(figure, { form, width: sheet.width });
}

/** Caption, methods and citations of a mixing line. */
export async function slipWords(
  caller: Caller,
  studyId: string,
  order: SlipFigureOrder,
): Promise<FigureWords> {
  const { oxides = null, sheet, choice } = order;
  const sides = await sidesOf(caller, studyId, order);
  const captions = await captionsOf(SLIP_FIGURES, async () => prepareMixingLine(sides, { oxides, sheet }));
  const references = slipReferences().map(({ text, doi }) => ({ text, doi }));
  return { captions, methods: slipMethods({ f: choice.f, version: VERSION }), references };
}

async function sidesOf(caller: Caller, studyId: string, order: SlipFigureOrder): Promise<MixingSides> {
  await requireStudy(caller, studyId);
  const { choice, normalisation, fraction, others } = order;
  const basis = { normalisation, fraction };
  const { samples } = await readMeasured(caller, studyId, { ...basis, measured: 'paint', specimens: null });
  const paint = samples.find(({ id }) => id === choice.specimen);
  if (paint === undefined)
    throw new RequirementError(
      'a mixing line needs an analysis of the paint; the specimen chosen has none in this study',
    );
  const slip = slipFor(choice.source, paint, await readSlips(caller, studyId, basis));
  const replicas = new Set(others ? await replicaIds(caller, studyId) : []);
  const beside = samples.filter(({ id }) => replicas.has(id) && id !== paint.id);
  return { paint, slip, f: choice.f, others: beside };
}

async function replicaIds({ db }: Caller, studyId: string): Promise<string[]> {
  const rows = await db
    .select({ id: visibleSpecimen.id })
    .from(visibleSpecimen)
    .where(and(eq(visibleSpecimen.studyId, studyId), eq(visibleSpecimen.kind, 'replica')));
  return rows.map(({ id }) => id);
}
