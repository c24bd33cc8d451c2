import type { FigureForm, FigureSheet, FigureWords } from '../contract/figure.ts';
import type { FiringRecord } from '../contract/firing.ts';
import {
  type ComparedFigureFile,
  type ComparedFigureWish,
  FIRING_FIGURES,
  type FiringFigureFile,
} from '../contract/firing-figure.ts';
import { firingMethods, firingReferences } from '../domain/report/firing-methods.ts';
import { type DrawnFile, drawPrepared } from '../export/figure-file.ts';
import { prepareComparedCurves, prepareFiringCurve } from '../export/firing-figures.ts';
import type { Caller } from './access.ts';
import { compareStudyFirings } from './compare-firings.ts';
import { captionsOf } from './figure-captions.ts';
import { readFiring } from './firings.ts';
import { VERSION } from './version.ts';

/** The curve of a firing, as a file. */
export async function firingFigure(
  caller: Caller,
  studyId: string,
  { id, file, sheet }: { readonly id: string; readonly file: FiringFigureFile; readonly sheet: FigureSheet },
): Promise<DrawnFile> {
  const form = file.split('.')[1] as FigureForm;
  const figure = prepareFiringCurve(await readFiring(caller, studyId, id), sheet);
  return drawPrepared(figure, { form, width: sheet.width });
}

/** Firings over one another, as a file. */
export async function comparedFigure(
  caller: Caller,
  studyId: string,
  { file, wish }: { readonly file: ComparedFigureFile; readonly wish: ComparedFigureWish },
): Promise<DrawnFile> {
  const form = file.split('.')[1] as FigureForm;
  const { curves } = await compareStudyFirings(caller, studyId, wish.firings);
  return drawPrepared(prepareComparedCurves(curves, wish), { form, width: wish.width });
}

/** Caption, methods and standards of the curve of a firing. */
export async function firingWords(
  caller: Caller,
  studyId: string,
  { id, sheet }: { readonly id: string; readonly sheet: FigureSheet },
): Promise<FigureWords> {
  const firing = await readFiring(caller, studyId, id);
  const captions = await captionsOf(FIRING_FIGURES, async () => prepareFiringCurve(firing, sheet));
  const about = { ...sensorsOf(firing), version: VERSION };
  const references = firingReferences(about).map(({ text, doi }) => ({ text, doi }));
  return { captions, methods: firingMethods(about), references };
}

const sensorsOf = ({ summary, readings }: FiringRecord) => ({
  channels: summary?.channels ?? [],
  readings: readings.map(({ reading }) => reading.kind),
});
