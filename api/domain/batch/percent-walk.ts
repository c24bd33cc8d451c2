import { oxideFactor } from '../chemistry/oxides.ts';
import { fireBatch } from './batch.ts';
import { massFactor } from './content.ts';
import { fireAt } from './fire.ts';
import { materialFromFormula } from './material.ts';
import {
  checkLine,
  leadEntry,
  type PrintedPaint,
  type PublishedLine,
  printedPaint,
  withoutSlip,
} from './published-line.ts';

/** One step of the way from a percentage to grams on the scale. */
export interface WalkStep {
  readonly title: string;
  readonly words: string;
  readonly before: WalkFigure;
  readonly after: WalkFigure;
  /** after = before × factor; null where more than a factor is at work. */
  readonly factor: number | null;
}

export interface WalkFigure {
  readonly value: number;
  readonly unit: 'wt%' | 'g';
  readonly what: string;
}

export interface LeadChoice {
  readonly name: string;
  readonly formula: string;
  readonly grams: number;
  readonly note: string;
}

export interface PercentWalk {
  readonly steps: readonly WalkStep[];
  /** Grams that bring the lead wanted, each used alone. */
  readonly choices: readonly LeadChoice[];
  /** What copying the percentage gives: that many grams of raw galena in 100 g of batch, the rest quartz. */
  readonly copied: { readonly galena: number; readonly leadOxide: number; readonly words: string };
}

const figure = (value: number, unit: WalkFigure['unit'], what: string): WalkFigure => ({ value, unit, what });
const CHOICES = [
  ['Galena', 'PbS', 'must be roasted first; keeps some sulfate'],
  ['Cerussite', 'PbCO3', 'gives off carbon dioxide'],
  ['Hydrocerussite (white lead)', '2PbCO3·Pb(OH)2', 'gives off carbon dioxide and water'],
  ['Litharge', 'PbO', 'loses nothing'],
  ['Minium (red lead)', 'Pb3O4', 'gives off oxygen'],
  ['Anglesite', 'PbSO4', 'holds on to sulfate as galena does'],
] as const;

/**
 * Walks from a published lead figure to grams of galena, cerussite or litharge: element to oxide, volatile-free and
 * closed to 100 (unless less than 90 wt% was printed), slip drawn off, amount wanted, mineral, purity. Every step carries both figures and, where one is
 * at work, its factor. Also says what copying the percentage as galena would give. Throws when the line holds no
 * lead or more than the slip leaves room for, on negative values, and on shares and amounts that are impossible.
 * @example
 * const line = { values: { Pb: 10, SiO2: 60, Al2O3: 20 }, slip: null, grams: 100, galenaPurity: 1, celsius: 850 }
 * walkFromPercent(line).choices.find((c) => c.formula === 'PbS').grams // 12.7212
 * walkFromPercent({ ...line, values: { SiO2: 60, Al2O3: 20 } }) // throws a lead figure
 */
export function walkFromPercent(line: PublishedLine): PercentWalk {
  checkLine(line);
  const printed = leadEntry(line.values);
  const whole = printedPaint(line.values);
  const read = whole.oxides;
  const paint = line.slip ? withoutSlip(read, printedPaint(line.slip.values).oxides, line.slip.share) : read;
  const grams = (paint.PbO! * line.grams) / 100;
  return {
    steps: [
      ...toOxide(printed, whole),
      ...slipStep(line, read.PbO!, paint.PbO!),
      ...toMineral(line, paint.PbO!, grams),
    ],
    choices: CHOICES.map(([name, formula, note]) => ({
      name,
      formula,
      note,
      grams: grams / massFactor(formula, 'PbO', 'Pb') / (formula === 'PbS' ? line.galenaPurity : 1),
    })),
    copied: copied(printed.value, paint.PbO!, line.celsius),
  };
}

function toOxide(printed: { name: string; value: number }, paint: PrintedPaint): WalkStep[] {
  const closed = paint.oxides.PbO!;
  const factor = oxideFactor('PbO') / oxideFactor(printed.name);
  const oxide = printed.value * factor;
  return [
    {
      title: 'From what was printed to oxide',
      words: `The paint holds lead as oxide, so ${printed.name} is written as PbO: grams of PbO for one gram of ${printed.name}.`,
      before: figure(printed.value, 'wt%', printed.name),
      after: figure(oxide, 'wt%', 'PbO'),
      factor,
    },
    {
      ...closingWords(paint),
      before: figure(oxide, 'wt%', 'PbO of the analysis'),
      after: figure(closed, 'wt%', 'PbO of the fired paint and slip'),
      factor: closed / oxide,
    },
  ];
}

/** Totals that need no word: the band usual in EDS of archaeological glass before normalisation. */
const USUAL_TOTAL = { low: 98, high: 102 };

function closingWords({ total, closed }: PrintedPaint): Pick<WalkStep, 'title' | 'words'> {
  const sum = `The oxides printed sum to ${total.toFixed(1)} wt%`;
  if (!closed)
    return {
      title: 'Not closed',
      words: `${sum}: the rest of the paint was not printed, so the figure is taken as it stands, as a share of the whole paint. Type the other oxides if you have them.`,
    };
  const words =
    'Everything that stays after firing is written as oxide and closed to 100, so that the figure is a share of the fired paint.';
  const odd = total < USUAL_TOTAL.low || total > USUAL_TOTAL.high;
  return {
    title: 'Closed to 100',
    words: odd ? `${words} ${sum}, not 100: what is missing or too much is spread over all of them.` : words,
  };
}

function slipStep({ slip }: PublishedLine, before: number, after: number): WalkStep[] {
  if (!slip) return [];
  return [
    {
      title: 'Slip drawn off',
      words: `${(100 * slip.share).toFixed(0)} % of what was read is slip, which the clay beneath brings by itself: it does not go into the batch.`,
      before: figure(before, 'wt%', 'PbO of the reading'),
      after: figure(after, 'wt%', 'PbO of the paint alone'),
      factor: null,
    },
  ];
}

function toMineral(
  { grams: wanted, galenaPurity }: PublishedLine,
  percent: number,
  grams: number,
): WalkStep[] {
  const perGalena = massFactor('PbS', 'PbO', 'Pb');
  const galena = grams / perGalena;
  return [
    {
      title: 'Grams of oxide wanted',
      words: `${wanted} g of fired paint are wanted.`,
      before: figure(percent, 'wt%', 'PbO of the paint'),
      after: figure(grams, 'g', 'PbO'),
      factor: wanted / 100,
    },
    {
      title: 'Grams of galena',
      words:
        'Galena is lead and sulfur: one gram of it leaves less than one gram of oxide once the sulfur has gone, so more of it is needed.',
      before: figure(grams, 'g', 'PbO'),
      after: figure(galena, 'g', 'pure galena'),
      factor: 1 / perGalena,
    },
    {
      title: 'Galena as it is dug',
      words: `The ore at hand is ${(100 * galenaPurity).toFixed(0)} % galena by mass.`,
      before: figure(galena, 'g', 'pure galena'),
      after: figure(galena / galenaPurity, 'g', 'ore'),
      factor: 1 / galenaPurity,
    },
    {
      title: 'Sulfur that must go',
      words:
        'Roast the ground ore first, outdoors: this much sulfur dioxide leaves if all of the sulfur goes, less while sulfate stays.',
      before: figure(galena, 'g', 'pure galena'),
      after: figure(galena * massFactor('PbS', 'SO2', 'S'), 'g', 'SO2 at most'),
      factor: massFactor('PbS', 'SO2', 'S'),
    },
  ];
}

function copied(percent: number, wanted: number, celsius: number): PercentWalk['copied'] {
  const galena = Math.min(percent, 100);
  const batch = [
    { material: materialFromFormula({ id: 'galena', name: 'galena' }, 'PbS'), amount: galena },
    { material: materialFromFormula({ id: 'quartz', name: 'quartz' }, 'SiO2'), amount: 100 - galena },
  ];
  const leadOxide = fireBatch(batch, fireAt({ celsius })).oxides.find((o) => o.oxide === 'PbO')!.percent;
  const words = `Copied as ${galena} g of raw galena in 100 g of batch, the paint would hold ${leadOxide.toFixed(1)} wt% PbO instead of ${wanted.toFixed(1)}, and its sulfur would still be in it: without the roast it does not glaze, and more raw galena does not help.`;
  return { galena, leadOxide, words };
}
