import type { Formula } from '../chemistry/formula.ts';
import { RequirementError } from '../requirement.ts';
import { analysisContent, type MaterialAnalysis } from './analysis-content.ts';
import { formulaContent, mixContents } from './content.ts';
import { sulfideSulfur } from './sulfur.ts';
import type { Content, Hazard, Material, Span } from './types.ts';

/** What a user says of a material besides its chemistry. */
export interface MaterialNotes {
  readonly id: string;
  readonly name: string;
  readonly source?: string;
  readonly handling?: string;
  readonly hazards?: readonly Hazard[];
  readonly pricePerKg?: number | null;
  readonly onHand?: number | null;
}

/** How pure a material sold or gathered under a formula is, as mass fractions, and what the rest is. */
export interface Purity {
  readonly share: number | Span;
  /** What comes with it, such as quartz; null leaves the rest unaccounted. */
  readonly gangue: Content | null;
}

const PURE: Purity = { share: 1, gangue: null };

/**
 * A material from its chemical formula, pure by default; with a purity (mass fraction, or a range of them) the rest
 * is the gangue named, or unaccounted for. Throws on formulas that cannot be read and on purities outside 0 to 1.
 * @example
 * materialFromFormula({ id: 'g', name: 'galena' }, 'PbS').hazards // ['lead', 'sulfur']
 * materialFromFormula({ id: 'g', name: 'galena' }, 'PbS', { share: 1.2, gangue: null }) // throws above 0 and up to 1
 */
export function materialFromFormula(
  notes: MaterialNotes,
  formula: Formula | string,
  purity = PURE,
): Material {
  const pure = formulaContent(formula);
  const { share } = purity;
  const span = typeof share === 'number' ? { low: share, high: share } : share;
  if (!(span.low > 0 && span.low <= span.high && span.high <= 1))
    throw new RequirementError(
      `a purity needs a share above 0 and up to 1; found ${span.low} to ${span.high}`,
    );
  const gangue = purity.gangue ?? { moles: {}, otherLoss: 0, unreported: 1 };
  const at = (p: number) =>
    mixContents([
      { content: pure, share: p },
      { content: gangue, share: 1 - p },
    ]);
  const text = typeof formula === 'string' ? formula : formula.text;
  return completeMaterial(notes, {
    origin: { kind: 'formula', formula: text, purity: span },
    content: at((span.low + span.high) / 2),
    spread: span.low < span.high ? { low: at(span.low), high: at(span.high) } : null,
    source: `formula ${text}`,
  });
}

/**
 * A material from an analysis with loss on ignition (wt% of the dry material), such as a clay or an ore of the
 * study. Throws as `analysisContent` does; its warnings stay with the material.
 * @example
 * materialFromAnalysis({ id: 'c', name: 'clay' }, { values: { SiO2: 60, Al2O3: 28 }, lossOnIgnition: 12 }).warnings // []
 */
export function materialFromAnalysis(notes: MaterialNotes, analysis: MaterialAnalysis): Material {
  const { content, total, sigma, warnings } = analysisContent(analysis);
  return completeMaterial(notes, {
    origin: { kind: 'analysis', total, lossOnIgnition: analysis.lossOnIgnition },
    content,
    spread: null,
    sigma,
    warnings,
    source: 'analysis',
  });
}

type Chemistry = Pick<Material, 'origin' | 'content' | 'spread' | 'source'> &
  Partial<Pick<Material, 'sigma' | 'warnings'>>;

/**
 * A material with its chemistry and the notes of its user; hazards follow from what it holds, plus those noted.
 * Throws on a negative price or amount on hand.
 * @example
 * completeMaterial({ id: 'q', name: 'quartz', onHand: -1 }, { origin: { kind: 'formula', formula: 'SiO2', purity: { low: 1, high: 1 } }, content: formulaContent('SiO2'), spread: null, source: '' }) // throws on hand
 */
export function completeMaterial(notes: MaterialNotes, chemistry: Chemistry): Material {
  const { pricePerKg = null, onHand = null } = notes;
  if ((onHand ?? 0) < 0 || (pricePerKg ?? 0) < 0)
    throw new RequirementError(
      `price and amount on hand need zero or more; found ${pricePerKg} and ${onHand}`,
    );
  const hazards = new Set([...hazardsOf(chemistry.content), ...(notes.hazards ?? [])]);
  return {
    ...chemistry,
    id: notes.id,
    name: notes.name,
    source: notes.source ?? chemistry.source,
    sigma: chemistry.sigma ?? {},
    warnings: chemistry.warnings ?? [],
    hazards: [...hazards],
    handling: notes.handling ?? '',
    pricePerKg,
    onHand,
  };
}

const POISONS = ['As', 'Cd', 'Sb', 'Ba', 'Cr', 'Co', 'Ni', 'V', 'U', 'Th', 'Hg', 'Be', 'Tl'];
const TRACE = 1e-5;

/**
 * Hazards that follow from what a material holds: lead, sulfide sulfur (SO2 when fired), silica dust, manganese,
 * other poisons. Amounts below 0.01 mmol/g raise none.
 * @example
 * hazardsOf(formulaContent('MnO2')) // ['manganese']
 * hazardsOf(formulaContent('PbSO4')) // ['lead', 'sulfur']
 */
export function hazardsOf(content: Content): Hazard[] {
  const has = (element: string) => (content.moles[element] ?? 0) > TRACE;
  const found: Hazard[] = [];
  if (has('Pb')) found.push('lead');
  if (has('S') && (has('Pb') || sulfideSulfur(content) > 0 || !has('Ca'))) found.push('sulfur');
  if (has('Si')) found.push('silica');
  if (has('Mn')) found.push('manganese');
  if (POISONS.some(has)) found.push('poison');
  return found;
}
