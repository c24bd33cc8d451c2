import { atomicWeight } from '../chemistry/atomic-weights.ts';
import { type Formula, molarMass, parseFormula } from '../chemistry/formula.ts';
import { RequirementError } from '../requirement.ts';
import type { Content } from './types.ts';

/**
 * What one gram of a pure substance holds, from its formula (hydrates, fractions and brackets as in `parseFormula`).
 * Moles of each element per gram. Throws on a formula that cannot be read.
 * @example
 * formulaContent('PbS').moles.Pb // 0.00417955
 * formulaContent('CaSO4·1/2H2O').moles.H // 0.00688990
 * formulaContent('PbX') // throws X
 */
export function formulaContent(formula: Formula | string): Content {
  const parsed = typeof formula === 'string' ? parseFormula(formula) : formula;
  const mass = molarMass(parsed);
  const moles = Object.fromEntries(
    Object.entries(parsed.elements).map(([element, count]) => [element, count / mass]),
  );
  return { moles, otherLoss: 0, unreported: 0 };
}

/**
 * Grams that a content accounts for; 1 for a content per gram. Used to see that no mass is made or lost.
 * @example
 * contentMass(formulaContent('Al2Si2O5(OH)4')) // 1
 */
export function contentMass(content: Content): number {
  const elements = Object.entries(content.moles).reduce((sum, [el, n]) => sum + n * atomicWeight(el), 0);
  return elements + content.otherLoss + content.unreported;
}

/**
 * The content of a mixture: each part's content times its share (shares in grams; they need not sum to 1).
 * Throws on a negative share.
 * @example
 * mixContents([{ content: formulaContent('PbS'), share: 0.9 }, { content: formulaContent('SiO2'), share: 0.1 }]).moles.Pb // 0.00376160
 */
export function mixContents(
  parts: readonly { readonly content: Content; readonly share: number }[],
): Content {
  const moles: Record<string, number> = {};
  let otherLoss = 0;
  let unreported = 0;
  for (const { content, share } of parts) {
    if (!(share >= 0)) throw new RequirementError(`a mixture needs shares of zero or more; found ${share}`);
    for (const [element, n] of Object.entries(content.moles))
      moles[element] = (moles[element] ?? 0) + n * share;
    otherLoss += content.otherLoss * share;
    unreported += content.unreported * share;
  }
  return { moles, otherLoss, unreported };
}

/**
 * Grams of a product that carry as much of one element as one gram of the starting substance: what a gram becomes.
 * Checked against published conversion factors in the tests. Throws when either formula lacks the element.
 * @example
 * massFactor('PbS', 'PbO', 'Pb') // 0.932867
 * massFactor('PbS', 'PbSO4', 'Pb') // 1.26747
 * massFactor('PbS', 'SO2', 'S') // 0.267731
 * massFactor('PbS', 'SiO2', 'Si') // throws holds no Si
 */
export function massFactor(from: string, to: string, element: string): number {
  const [before, after] = [atomsOf(from, element), atomsOf(to, element)];
  return ((before / after) * molarMass(to)) / molarMass(from);
}

function atomsOf(formula: string, element: string): number {
  const atoms = parseFormula(formula).elements[element];
  if (!atoms)
    throw new RequirementError(`a mass factor needs ${element} in both; ${formula} holds no ${element}`);
  return atoms;
}
