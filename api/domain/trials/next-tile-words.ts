import { listInWords } from '../placement/words.ts';
import { dot } from '../slip/weighted.ts';
import type { Belief } from './belief.ts';
import { logistic } from './logistic-model.ts';
import { findTangles } from './tangles.ts';
import { type TrialTable, trialTable } from './trial-table.ts';
import type { Level, NextTile, NextTileRequest, Zone } from './types.ts';
import { levelInWords } from './unit-words.ts';

interface ProposalWords {
  readonly proposal: Omit<NextTile, 'reason' | 'cautions'>;
  readonly repeat: { readonly label: string; readonly gain: number };
  readonly belief: Belief;
  readonly rows: readonly (readonly number[])[];
}

/**
 * Why this tile, in plain words: what it parts, where its zones lie, how far intervals should narrow, and what a
 * repeat would have told; and how far to trust that. Never throws.
 *
 * @example
 * const zone = (tile, coats, grade) => ({ id: tile + coats, label: `${coats}`, tile, tileLabel: tile, firing: null, factors: { coats }, grade, glassyShare: null })
 * const zones = [zone('T1', 1, 'matt'), zone('T1', 2, 'glossy'), zone('T1', 3, 'matt'), zone('T1', 4, 'glossy')]
 * const asked = { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1, options: [{ name: 'coats', at: 'zone', values: [1, 6] }], zonesOnTile: 2 }
 * proposeTile(zones, asked).reason.startsWith('Put 1 zone at 1 coat and 1 zone at 6 coats.') // true
 */
export function nextTileReason(
  table: TrialTable,
  request: NextTileRequest,
  words: ProposalWords,
): Pick<NextTile, 'reason' | 'cautions'> {
  const { proposal, belief, rows } = words;
  return {
    reason: [
      layout(proposal, request),
      ...untangled(table, request, proposal),
      chances(belief, rows),
      narrowing(proposal, request),
      ...versusRepeat(words),
    ].join(' '),
    cautions: [
      'The widths are those of the model (a level of its own for each tile), not of the permutation that will judge the outcome; the outcome itself may narrow them less.',
      ...(proposal.exhaustive
        ? []
        : [
            'There are too many ways to fill the tile to weigh all; this is the best found from several starts.',
          ]),
    ],
  };
}

function layout({ zones, tile }: ProposalWords['proposal'], { options, factors }: NextTileRequest): string {
  const at = (settings: Readonly<Record<string, Level>>) =>
    Object.entries(settings)
      .map(([name, level]) => levelInWords(factors.find((f) => f.name === name)!, level))
      .join(', ');
  const counts = new Map<string, number>();
  for (const z of zones) counts.set(at(z), (counts.get(at(z)) ?? 0) + 1);
  const spots = [...counts].map(([where, n]) => `${n} ${n === 1 ? 'zone' : 'zones'} at ${where}`);
  const whole = Object.fromEntries(
    Object.entries(tile).filter(([name]) => options.some((o) => o.name === name && o.at === 'tile')),
  );
  const first = Object.keys(whole).length > 0 ? `Make the tile with ${at(whole)}. ` : '';
  return [...counts.keys()].join('') === ''
    ? `${first}All its ${zones.length} zones are alike.`
    : `${first}Put ${listInWords(spots)}.`;
}

/** Factors that changed together so far and no longer do with this tile. */
function untangled(
  table: TrialTable,
  request: NextTileRequest,
  { tile, zones }: ProposalWords['proposal'],
): string[] {
  const fired: Zone[] = zones.map((z, i) => ({
    id: `next ${i}`,
    label: `${i}`,
    tile: 'next',
    tileLabel: 'next',
    firing: table.zones[0]!.firing,
    factors: { ...tile, ...z },
    grade: 'matt',
    glassyShare: null,
  }));
  const outcome = table.outcome;
  const after = trialTable([...table.zones, ...fired], { ...request, outcome });
  const names = (t: { factors: readonly string[] }) => t.factors.join('\n');
  const left = new Set(findTangles(after).map(names));
  return findTangles(table)
    .filter((t) => t.kind !== 'partly' && !left.has(names(t)))
    .map((t) =>
      t.kind === 'constant'
        ? `It changes ${t.factors[0]}, which has been the same so far.`
        : `It parts ${listInWords(t.factors)}, which have changed together so far.`,
    );
}

function chances({ draws }: Belief, rows: ProposalWords['rows']): string {
  const all = rows.map((row) => logistic(dot(row, draws[0]!)));
  const show = (p: number) => `${Math.round(100 * p)} %`;
  const [low, high] = [show(Math.min(...all)), show(Math.max(...all))];
  const span = low === high ? low : `${low} to ${high}`;
  return `By what is known now its zones have a chance of ${span}; those near an even chance tell most.`;
}

function narrowing({ shrinkage }: ProposalWords['proposal'], { interest }: NextTileRequest): string {
  const shown = shrinkage.filter((s) => interest === undefined || s.factor === interest);
  const percent = shown.map((s) => Math.round(100 * (1 - s.expected / s.now)));
  const parts = shown.flatMap((s, i) =>
    percent[i]! > 0 ? [`${s.factor}, ${s.contrast}, by about ${percent[i]} %`] : [],
  );
  if (parts.length === 0) return 'It should hardly narrow any interval.';
  const rest = parts.length < shown.length ? '; the others hardly at all' : '';
  return `Expected narrowing of the intervals: ${parts.join('; ')}${rest}.`;
}

function versusRepeat({ proposal, repeat }: ProposalWords): string[] {
  if (!(repeat.gain > 0)) return [];
  const times = proposal.gain / repeat.gain;
  return times < 1.05
    ? [`Making ${repeat.label} again would tell about as much.`]
    : [`It is worth ${times.toPrecision(2)} times what making ${repeat.label} again would tell.`];
}
