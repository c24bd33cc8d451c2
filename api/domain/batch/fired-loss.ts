import { atomicWeight } from '../chemistry/atomic-weights.ts';
import { type Fire, fireContent } from './fire.ts';
import { dryMass } from './line.ts';
import { sulfideSulfur } from './sulfur.ts';
import type { BatchLine, Content, Span } from './types.ts';

/**
 * Loss of a batch in a fire, wt% of the dry batch (negative: a gain), with its range over what is not known: sulfur
 * kept per lead and purity at either end, sulfide that did not oxidise at all, and mass the analyses do not account
 * for, staying and going. Takes lines that hold something.
 * @example
 * galena = materialFromFormula({ id: 'g', name: 'galena' }, 'PbS')
 * quartz = materialFromFormula({ id: 'q', name: 'quartz' }, 'SiO2')
 * firedLoss([{ material: galena, amount: 60 }, { material: quartz, amount: 40 }], fireAt({ celsius: 850 })) // { percent: -2.99898, low: -6.01041, high: 0.0124384 }
 */
export function firedLoss(batch: readonly BatchLine[], fire: Fire): Span & { readonly percent: number } {
  const dry = batch.reduce((sum, line) => sum + dryMass(line), 0);
  const percent = (mass: number) => (100 * (dry - mass)) / dry;
  const central = massLeft(batch, (line) => oxidised(line.material.content, fire));
  const ends = (['low', 'high'] as const).flatMap((end) => {
    const contentOf = ({ material }: BatchLine) => material.spread?.[end] ?? material.content;
    const held = (['low', 'high'] as const).map((level) => {
      const at = fire.sulfurPerLead[level];
      const set = { ...fire, sulfurPerLead: { low: at, high: at, central: at } };
      return massLeft(batch, (line) => oxidised(contentOf(line), set));
    });
    return [...held, massLeft(batch, (line) => unoxidised(contentOf(line), fire))];
  });
  const all = [central, ...ends];
  return {
    percent: percent(central.fired + central.unreported / 2),
    low: Math.min(...all.map(({ fired, unreported }) => percent(fired + unreported))),
    high: Math.max(...all.map(({ fired }) => percent(fired))),
  };
}

interface Left {
  readonly fired: number;
  readonly unreported: number;
}

const total = (grams: Readonly<Record<string, number>>) =>
  Object.values(grams).reduce((sum, g) => sum + g, 0);

function oxidised(content: Content, fire: Fire): Left {
  const { oxides, unreported } = fireContent(content, fire);
  return { fired: total(oxides), unreported };
}

/** As far as sulfide can survive it does: lead with its sulfur, without the four atoms of oxygen of a sulfate. */
function unoxidised(content: Content, fire: Fire): Left {
  const { oxides, kept, unreported } = fireContent(content, fire, 'high');
  const sulfide = Math.min(sulfideSulfur(content), kept.S ?? 0);
  return { fired: total(oxides) - 4 * sulfide * atomicWeight('O'), unreported };
}

function massLeft(batch: readonly BatchLine[], of: (line: BatchLine) => Left): Left {
  let [fired, unreported] = [0, 0];
  for (const line of batch) {
    const left = of(line);
    fired += left.fired * dryMass(line);
    unreported += left.unreported * dryMass(line);
  }
  return { fired, unreported };
}
