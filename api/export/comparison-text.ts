import { type ComparisonSource, type ComparisonText, FIGURES, type FigureLook } from '../contract/figure.ts';
import type { Comparison } from '../contract/placement.ts';
import { listInWords } from '../domain/placement/words.ts';
import { methodReferences, methodsParagraph } from '../domain/report/methods.ts';
import { RequirementError } from '../domain/requirement.ts';
import { chemical } from '../figures/chemical.ts';
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
    methods: withFormulas(methodsParagraph(about), comparison),
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

/** Each source once, after the ware groups that are from it. */
function sourcesInWords(sources: readonly ComparisonSource[]): string {
  const groups = new Map<string, string[]>();
  for (const { kind, name, source, doi } of sources) {
    const words = [source.replace(/[.]$/, ''), doi && `doi:${doi}`].filter(Boolean).join(', ');
    if (kind === 'ware group' && words !== '') groups.set(words, [...(groups.get(words) ?? []), name]);
  }
  const each = [...groups].map(([words, names]) => `${listInWords(names)}: ${words}`);
  return each.length > 0 ? `Sources: ${each.join('; ')}.` : '';
}

/** Formulas of oxides in running text with their figures set low, as on the figures. */
function withFormulas(text: string, { model, request }: Comparison): string {
  const { volatileFree: _, ...forms } = request.normalisation;
  const longestFirst = [...new Set([...model.parts, ...Object.values(forms)])].sort(
    (one, other) => other.length - one.length,
  );
  return text.replace(new RegExp(`\\b(${longestFirst.join('|')})\\b`, 'g'), (formula) => chemical(formula));
}
