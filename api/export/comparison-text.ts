import { type ComparisonSource, type ComparisonText, FIGURES, type FigureLook } from '../contract/figure.ts';
import type { Comparison } from '../contract/placement.ts';
import { methodReferences, methodsParagraph } from '../domain/report/methods.ts';
import { RequirementError } from '../domain/requirement.ts';
import { prepareFigure } from './comparison-figures.ts';

export interface TextAbout {
  readonly look: FigureLook;
  readonly version: string;
  readonly sources: readonly ComparisonSource[];
}

/** Captions, methods and citations of a comparison, in words. A figure that cannot be drawn says why. */
export function comparisonText(
  comparison: Comparison,
  { look, version, sources }: TextAbout,
): ComparisonText {
  const { model, placements, request } = comparison;
  const about = {
    ...{ model, version, normalisation: request.normalisation, measured: request.measured },
    placed: placements.length,
    replacedPlaced: placements.reduce((sum, { replaced }) => sum + replaced.length, 0),
    leftOutByHand: request.leaveOut.length,
    slipDrawnOff: comparison.slip?.length ?? 0,
  };
  const captions = Object.fromEntries(
    FIGURES.map((name) => [name, `${captionOf(comparison, name, look)} ${sourcesInWords(sources)}`.trim()]),
  );
  const references = methodReferences(about).map(({ text, doi }) => ({ text, doi }));
  return {
    captions: captions as ComparisonText['captions'],
    methods: methodsParagraph(about),
    references,
    sources: [...sources],
  };
}

function captionOf(comparison: Comparison, name: (typeof FIGURES)[number], look: FigureLook): string {
  try {
    return prepareFigure(comparison, name, look).caption;
  } catch (error) {
    if (error instanceof RequirementError) return `No such figure: ${error.message}.`;
    throw error;
  }
}

function sourcesInWords(sources: readonly ComparisonSource[]): string {
  const named = sources
    .filter(({ kind, source, doi }) => kind === 'ware group' && (source !== '' || doi !== ''))
    .map(({ name, source, doi }) => `${name}: ${[source, doi && `doi:${doi}`].filter(Boolean).join(', ')}`);
  return named.length > 0 ? `Sources: ${named.join('; ')}.` : '';
}
