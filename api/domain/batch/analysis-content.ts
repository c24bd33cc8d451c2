import { parseFormula } from '../chemistry/formula.ts';
import { elementOf } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { contentMass, mixContents } from './content.ts';
import { massPerAtom } from './fire.ts';
import { firedForm, REPORTED_FORMS, VOLATILE } from './fired-forms.ts';
import type { Content } from './types.ts';

/** An analysis of a material, wt% of the dry material: oxides or elements, H2O and CO2 where measured, LOI. */
export interface MaterialAnalysis {
  readonly values: Readonly<Record<string, number>>;
  /** wt%; null when the analysis states none. */
  readonly lossOnIgnition: number | null;
  /** One standard deviation by analyte, wt%. */
  readonly sigma?: Readonly<Record<string, number>>;
}

export interface AnalysedContent {
  readonly content: Content;
  /** Oxides plus loss on ignition, wt%. */
  readonly total: number;
  readonly sigma: Readonly<Record<string, number>>;
  readonly warnings: readonly string[];
}

const MOST = 110;

/**
 * What one gram of a material holds, from its analysis with loss on ignition. Elements given as such count as their
 * usual oxides, but sulfur: `S` is sulfide (one S in place of one O), `SO3` sulfate. H2O and CO2, where measured, are part of the loss on ignition; the rest of it is of unstated kind.
 * What is missing from 100 stays unaccounted; a total above 100 is scaled down, both with a warning. Throws on
 * negative values, on an element given twice, on a loss smaller than its parts, and on totals above 110.
 * @example
 * analysisContent({ values: { SiO2: 60, Al2O3: 30 }, lossOnIgnition: 10 }).total // 100
 * analysisContent({ values: { SiO2: 60, Al2O3: 30 }, lossOnIgnition: 10 }).content.otherLoss // 0.1
 * analysisContent({ values: { SiO2: 180 }, lossOnIgnition: null }) // throws at most 110
 */
export function analysisContent(analysis: MaterialAnalysis): AnalysedContent {
  checkValues(analysis);
  const volatiles = sumOf(analysis.values, isVolatile);
  const loss = analysis.lossOnIgnition ?? volatiles;
  if (loss < volatiles)
    throw new RequirementError(
      `a loss on ignition needs to hold its water and carbon dioxide; ${loss} is below ${volatiles} wt%`,
    );
  const stated = { moles: molesOf(analysis.values), otherLoss: (loss - volatiles) / 100, unreported: 0 };
  const total = 100 * contentMass(stated);
  if (!(total > 0 && total <= MOST))
    throw new RequirementError(
      `an analysis needs a total above 0 and at most ${MOST} wt%; found ${round(total)}`,
    );
  const share = 100 / Math.max(total, 100);
  const scaled = mixContents([{ content: stated, share }]);
  const content = { ...scaled, unreported: Math.max(0, 100 - total) / 100 };
  return { content, total, sigma: sigmaMoles(analysis.sigma ?? {}, share), warnings: warn(analysis, total) };
}

const isVolatile = (name: string) => (elementOf(name) ?? '') in VOLATILE;
const round = (x: number) => Number(x.toPrecision(4));
const sumOf = (values: Readonly<Record<string, number>>, keep: (name: string) => boolean) =>
  Object.entries(values).reduce((sum, [name, wt]) => sum + (keep(name) ? wt : 0), 0);

function checkValues({ values, lossOnIgnition }: MaterialAnalysis): void {
  const seen = new Map<string, string>();
  if (lossOnIgnition !== null && !(lossOnIgnition >= 0 && lossOnIgnition < 100))
    throw new RequirementError(`a loss on ignition needs 0 to 100 wt%; found ${lossOnIgnition}`);
  for (const [name, wt] of Object.entries(values)) {
    const element = elementOf(name);
    if (element === null)
      throw new RequirementError(`an analysis needs oxides or elements; ${name} is neither`);
    if (!(wt >= 0)) throw new RequirementError(`an analysis needs values of zero or more; ${name} is ${wt}`);
    if (seen.has(element))
      throw new RequirementError(
        `an analysis needs each element once; ${seen.get(element)} and ${name} are both ${element}`,
      );
    seen.set(element, name);
  }
}

/** Moles of each element per gram; sulfide takes the place of oxygen, as far as there is any. */
function molesOf(values: Readonly<Record<string, number>>): Record<string, number> {
  const moles: Record<string, number> = {};
  const oxygen = { solids: 0, volatiles: 0 };
  for (const [name, wt] of Object.entries(values)) {
    const element = elementOf(name)!;
    const n = wt / 100 / massPerAtom(name);
    moles[element] = (moles[element] ?? 0) + n;
    oxygen[isVolatile(name) ? 'volatiles' : 'solids'] += n * oxygenBeside(name, element);
  }
  const sulfide = 'S' in values ? moles.S! : 0;
  moles.O = Math.max(0, oxygen.solids - sulfide) + oxygen.volatiles;
  return moles;
}

/** Oxygen atoms that come with one atom of the element as the material holds it. */
function oxygenBeside(name: string, element: string): number {
  const asIs = isVolatile(name) || name === 'S' || name !== element;
  const { elements } = parseFormula(asIs ? name : firedForm(element, REPORTED_FORMS));
  return (elements.O ?? 0) / elements[element]!;
}

function sigmaMoles(sigma: Readonly<Record<string, number>>, share: number): Record<string, number> {
  return Object.fromEntries(
    Object.entries(sigma)
      .filter(([name]) => elementOf(name) !== null)
      .map(([name, s]) => [elementOf(name)!, (s * share) / 100 / massPerAtom(name)]),
  );
}

function warn({ lossOnIgnition }: MaterialAnalysis, total: number): string[] {
  const warnings: string[] = [];
  if (total < 97)
    warnings.push(
      `The analysis sums to ${round(total)} wt%: what is missing may stay or go in the fire, so results carry that gap.`,
    );
  if (total > 103) warnings.push(`The analysis sums to ${round(total)} wt%: it was scaled down to 100.`);
  if (lossOnIgnition === null)
    warnings.push('The analysis states no loss on ignition: weigh a dry sample before and after firing.');
  return warnings;
}
