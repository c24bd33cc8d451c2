import { RequirementError } from '../requirement.ts';
import type { Content, Span } from './types.ts';

/** What a fire leaves of the sulfur that came with lead: moles of S kept (as sulfate) per mole of Pb. */
export interface SulfurOutlook extends Span {
  readonly central: number;
  /** Lead phases seen at this temperature when galena was heated in air. */
  readonly phases: readonly string[];
  readonly words: string;
}

/** Galena heated in air, J. Therm. Anal. Calorim. doi 10.1007/s10973-005-6785-6: first seen at °C, S per Pb. */
const SEEN = [
  { celsius: 300, phase: 'PbSO4', sulfur: 1 },
  { celsius: 580, phase: 'PbO·PbSO4', sulfur: 1 / 2 },
  { celsius: 800, phase: '2PbO·PbSO4', sulfur: 1 / 3 },
  { celsius: 900, phase: '4PbO·PbSO4', sulfur: 1 / 5 },
  { celsius: 1000, phase: 'PbO', sulfur: 0 },
] as const;

/**
 * Sulfur kept per lead (mol/mol) that a temperature (°C) leads one to expect for ground galena heated in air: from
 * the phase next seen above that temperature up to the one before the last seen below it, since real charges lag
 * and lanarkite dominates where there is silica (doi 10.1111/jace.15346). Lumps keep more. Source: thermal analysis
 * of galena, doi 10.1007/s10973-005-6785-6. Throws on a temperature that is not a number from 0 to 1400.
 * @example
 * sulfurOutlook(850).low // 0.2
 * sulfurOutlook(850).high // 0.5
 * sulfurOutlook(850).phases // ['PbO·PbSO4', '2PbO·PbSO4', '4PbO·PbSO4']
 * sulfurOutlook(200).high // 1
 */
export function sulfurOutlook(celsius: number): SulfurOutlook {
  if (!(celsius >= 0 && celsius <= 1400))
    throw new RequirementError(`a fire needs a temperature from 0 to 1400 °C; found ${celsius}`);
  const reached = SEEN.filter((s) => s.celsius <= celsius);
  const last = reached.at(-1);
  if (!last)
    return {
      low: 1,
      high: 1,
      central: 1,
      phases: ['PbS'],
      words: 'below about 300 °C galena stays as it is',
    };
  const next = SEEN[reached.length] ?? last;
  const [low, high] = [next.sulfur, reached.at(-2)?.sulfur ?? 1];
  const phases = SEEN.slice(Math.max(0, reached.length - 2), reached.length + 1).map((s) => s.phase);
  const then = next === last ? '' : `, ${next.phase} from ${next.celsius} °C`;
  const words = `in air, ground galena was seen as ${last.phase} from ${last.celsius} °C${then}; real charges lag behind`;
  return { low, high, central: (low + high) / 2, phases, words };
}

/**
 * Moles of sulfur per gram that are still sulfide, from the oxygen that a lead charge lacks to be oxide and sulfate
 * (four atoms for each PbS). 0 for anything without lead and sulfur.
 * @example
 * sulfideSulfur({ moles: { Pb: 1, S: 1, O: 0 }, otherLoss: 0, unreported: 0 }) // 1
 * sulfideSulfur({ moles: { Pb: 1, S: 1, O: 4 }, otherLoss: 0, unreported: 0 }) // 0
 */
export function sulfideSulfur(content: Content): number {
  const { Pb = 0, S = 0 } = content.moles;
  if (!(Pb > 0 && S > 0)) return 0;
  const lacking = (Pb + 3 * S - oxygenForLead(content)) / 4;
  return lacking < 1e-9 * S ? 0 : Math.min(lacking, S, Pb);
}

/** Valence that the other elements take up first; what oxygen is left belongs to lead and sulfur. */
const OXYGEN_TAKEN: Readonly<Record<string, number>> = {
  ...{
    Si: 2,
    Ti: 2,
    Zr: 2,
    Sn: 2,
    C: 2,
    Al: 1.5,
    Fe: 1.5,
    Cr: 1.5,
    B: 1.5,
    P: 2.5,
    As: 1.5,
    Sb: 1.5,
    Bi: 1.5,
  },
  ...{
    Ca: 1,
    Mg: 1,
    Ba: 1,
    Sr: 1,
    Zn: 1,
    Mn: 1,
    Cu: 1,
    Co: 1,
    Ni: 1,
    Cd: 1,
    K: 0.5,
    Na: 0.5,
    Li: 0.5,
    Ag: 0.5,
    H: 0.5,
  },
};

function oxygenForLead(content: Content): number {
  const taken = Object.entries(content.moles).reduce((sum, [el, n]) => sum + n * (OXYGEN_TAKEN[el] ?? 0), 0);
  return Math.max(0, (content.moles.O ?? 0) - taken);
}

const HOLDS_SULFATE: Readonly<Record<string, number>> = {
  Ca: 1,
  Sr: 1,
  Ba: 1,
  K: 0.5,
  Na: 0.5,
  Li: 0.5,
  Rb: 0.5,
  Cs: 0.5,
};

/**
 * Moles of sulfur per gram that stay as sulfate: `perLead` for each mole of lead, and all that lime, baryta and
 * alkalis can hold of what is already sulfate (their sulfates outlast an earthenware fire: common knowledge, no
 * source read). Sulfides of other metals give their sulfur off.
 * @example
 * sulfurKept({ moles: { Pb: 1, S: 1, O: 0 }, otherLoss: 0, unreported: 0 }, 0.5) // 0.5
 * sulfurKept({ moles: { Ca: 1, S: 1, O: 4 }, otherLoss: 0, unreported: 0 }, 0.5) // 1
 */
export function sulfurKept(content: Content, perLead: number): number {
  const { Pb = 0, S = 0, O = 0 } = content.moles;
  if (S === 0) return 0;
  const bases = Object.entries(content.moles).reduce((sum, [el, n]) => sum + n * (HOLDS_SULFATE[el] ?? 0), 0);
  const sulfate = O >= 4 * S * (1 - 1e-9) ? bases : 0;
  return Math.min(S, perLead * Pb + sulfate);
}
