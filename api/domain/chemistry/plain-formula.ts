import { RequirementError } from '../requirement.ts';

const VULGAR: Readonly<Record<string, number>> = { '¼': 0.25, '½': 0.5, '¾': 0.75, '⅓': 1 / 3, '⅔': 2 / 3 };
const LONGEST = 200;

/**
 * A formula in plain characters: subscripts as digits, no spaces, `·` between the parts of a hydrate or double salt.
 * A full stop is a part's dot or a decimal point. It is a decimal point in a part's leading number (`2.5H2O`), after
 * a subscript 0 or 1 (never written otherwise: `Na0.5`, `AlO1.5`), and after a cation's subscript (`Fe2.5O4`); it is
 * a part's dot after a letter, a bracket or an anion's subscript (`Al2O3.2SiO2`, `CaF2.H2O`) and before water.
 * Throws on charges, on superscripts and on text longer than any formula.
 * @example
 * plainFormula('Al₂Si₂O₅(OH)₄') // 'Al2Si2O5(OH)4'
 * plainFormula('CuSO4.5H2O') // 'CuSO4·5H2O'
 * plainFormula('CaSO4 · ½ H2O') // 'CaSO4·0.5H2O'
 * plainFormula('SO4 2-') // throws charge
 */
export function plainFormula(text: string): string {
  if (text.length > LONGEST)
    throw new RequirementError(`a formula needs at most ${LONGEST} characters; ${text.length} were given`);
  refuseCharge(text);
  const plain = text
    .replace(/(\d*)([¼½¾⅓⅔])/g, (_, whole: string, part: string) => String(Number(whole) + VULGAR[part]!))
    .normalize('NFKC')
    .replace(/\s+[x×]\s+/g, '·')
    .replace(/[\s\u200b\u2060\ufeff]+/g, '')
    .replace(/[*•∙⋅・×‧]/g, '·')
    .replace(/⁄/g, '/');
  return dotParts(plain);
}

function refuseCharge(text: string): void {
  if (/[⁰¹²³⁴-⁹⁺⁻]|\^|[+−–-]/u.test(text))
    throw new RequirementError(
      `a formula needs a neutral substance; ${text.trim()} carries a charge or a superscript`,
    );
}

function dotParts(text: string): string {
  return text.replace(/\./g, (point, at: number) => {
    const before = text.slice(0, at);
    const after = text.slice(at + 1);
    return isPartDot(before, after) ? '·' : point;
  });
}

function isPartDot(before: string, after: string): boolean {
  if (!/^\d*(\.\d+)?(\/\d+)?[A-Z([{]/.test(after)) return false;
  if (/(^|[·.([{])\d*$/.test(before)) return false;
  if (/[A-Za-z)\]}]$/.test(before)) return true;
  const subscript = /([A-Za-z]+|[)\]}])(\d+)$/.exec(before);
  if (!subscript || Number(subscript[2]) < 2) return false;
  return /(O|F|S|N|Cl|Br|I|[)\]}])$/.test(subscript[1]!) || /^\d+(\.\d+)?H2O($|[.·])/.test(after);
}
