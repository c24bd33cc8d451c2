import { type FigureForm, type FigureWords, TRIAL_FIGURES, type TrialFigure } from '../contract/figure.ts';
import type { TrialAnswer } from '../contract/trial.ts';
import type { TrialFigureFile, TrialFigureOrder } from '../contract/trial-figure.ts';
import { trialMethods, trialReferences } from '../domain/report/trial-methods.ts';
import type { TrialAnalysis } from '../domain/trials/types.ts';
import { type DrawnFile, drawPrepared } from '../export/figure-file.ts';
import { prepareTrialFigure, type TrialSources } from '../export/trial-figures.ts';
import type { Caller } from './access.ts';
import { captionsOf } from './figure-captions.ts';
import { listTiles } from './tiles.ts';
import { analyseStudyTrial, chanceInStudy } from './trials.ts';
import { VERSION } from './version.ts';

/** One figure of what mattered, as a file. */
export async function trialFigure(
  caller: Caller,
  studyId: string,
  { file, order }: { readonly file: TrialFigureFile; readonly order: TrialFigureOrder },
): Promise<DrawnFile> {
  const [name, form] = file.split('.') as [TrialFigure, FigureForm];
  const { sheet } = order;
  const figure = await prepareTrialFigure(sourcesOf(caller, studyId, order), name, sheet);
  return drawPrepared(figure, { form, width: sheet.width });
}

/** Captions, methods and published methods of an analysis of trials. */
export async function trialWords(
  caller: Caller,
  studyId: string,
  order: TrialFigureOrder,
): Promise<FigureWords> {
  const sources = sourcesOf(caller, studyId, order);
  const analysis = await sources.analysis();
  const captions = await captionsOf(TRIAL_FIGURES, (name) => prepareTrialFigure(sources, name, order.sheet));
  const references = trialReferences(analysis).map(({ text, doi }) => ({ text, doi }));
  return { captions, methods: trialMethods({ analysis, version: VERSION }), references };
}

function sourcesOf(caller: Caller, studyId: string, order: TrialFigureOrder): TrialSources {
  const { sheet: _, against, held, ...asked } = order;
  const chance = {
    ...asked,
    against: against ?? asked.factors[0]!.name,
    ...(held === undefined ? {} : { held }),
  };
  let analysis: Promise<TrialAnswer> | undefined;
  return {
    async tiles() {
      const all = await listTiles(caller, studyId);
      return all.filter(({ id }) => asked.tiles?.includes(id) ?? true);
    },
    analysis() {
      analysis ??= analyseStudyTrial(caller, studyId, asked);
      return analysis as Promise<TrialAnalysis>;
    },
    curve: () => chanceInStudy(caller, studyId, chance),
  };
}
