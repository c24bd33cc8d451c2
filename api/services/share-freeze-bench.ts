import type { NewShare } from '../contract/share.ts';
import type { SharedBench, SharedOutcome } from '../contract/shared.ts';
import type { Tile } from '../contract/tile.ts';
import { linesOfEntries } from '../domain/batch/bench-shelf.ts';
import { benchSheet } from '../domain/batch/scale.ts';
import { trialMethods, trialReferences } from '../domain/report/trial-methods.ts';
import { RequirementError } from '../domain/requirement.ts';
import type { TrialAnalysis } from '../domain/trials/types.ts';
import type { Caller } from './access.ts';
import { paintOf } from './batch-figures.ts';
import { readBatch } from './batches.ts';
import { fireOnBench } from './bench.ts';
import { readShelf } from './bench-shelf.ts';
import { restingOn } from './share-outcome.ts';
import { becoming, type Frozen } from './share-payload.ts';
import { listTiles } from './tiles.ts';
import { analyseStudyTrial, chanceInStudy, zonesOf } from './trials.ts';
import { VERSION } from './version.ts';

type OutcomeWish = Extract<NewShare, { kind: 'outcome' }>;
type BenchWish = Extract<NewShare, { kind: 'bench' }>;
const made = (name: string) => ({ name, version: VERSION, createdAt: new Date().toISOString() });

/** What mattered, with the zones it rests on: as it stands now, whatever becomes of the tiles. */
export async function freezeOutcome(
  caller: Caller,
  studyId: string,
  { name, trial, against = trial.factors[0]!.name }: OutcomeWish,
): Promise<Frozen<SharedOutcome>> {
  const analysis = await analyseStudyTrial(caller, studyId, trial);
  const curve = await nullIfRefused(chanceInStudy(caller, studyId, { ...trial, against }));
  const zones = (await zonesOf(caller, studyId, trial.tiles)).map((zone) => ({
    ...{ tile: zone.tileLabel, label: zone.label, grade: zone.grade, glassyShare: zone.glassyShare },
    factors: Object.fromEntries(trial.factors.map((one) => [one.name, zone.factors[one.name] ?? null])),
  }));
  const chosen = (await listTiles(caller, studyId)).filter(({ id }) => trial.tiles?.includes(id) ?? true);
  const words = wordsOf(analysis as TrialAnalysis);
  const whole = { kind: 'outcome' as const, ...made(name), analysis, curve, zones, words };
  return { name, payload: restingOn({ ...whole, tiles: chosen.map(lying) }) };
}

const wordsOf = (analysis: TrialAnalysis): SharedOutcome['words'] => ({
  methods: trialMethods({ analysis, version: VERSION }),
  references: trialReferences(analysis).map(({ text, doi }) => ({ text, doi })),
});

/** A tile as it lies, its ids made into names that mean nothing in the study. */
function lying(tile: Tile): NonNullable<SharedOutcome['tiles']>[number] {
  const pictures = new Map(tile.pictures.map(({ id }, i) => [id, `${i}`]));
  return {
    ...{ label: tile.label, firing: tile.firing && tile.firingName, firingName: tile.firingName },
    ...{ rows: tile.rows, columns: tile.columns, settings: tile.settings },
    zones: tile.zones.map((zone) => ({
      ...{ label: zone.label, row: zone.row, column: zone.column, outline: zone.outline },
      picture: zone.picture === null ? null : (pictures.get(zone.picture) ?? null),
      ...{ coats: zone.coats, micrometres: zone.micrometres },
      ...{ grade: zone.grade, glassyShare: zone.glassyShare },
    })),
    pictures: tile.pictures.map(({ width, height }, i) => ({ id: `${i}`, width, height })),
  };
}

/** A batch with what it becomes. What is left on the shelf, what it cost and what each material brings stay with the owner. */
export async function freezeBench(
  caller: Caller,
  studyId: string,
  { batch, measured }: BenchWish,
): Promise<Frozen<SharedBench>> {
  const { name, note, unit, lines, fire, target, specimens } =
    typeof batch === 'string' ? await readBatch(caller, studyId, batch) : batch;
  const sheet = benchSheet(linesOfEntries(lines, await readShelf(caller, studyId)));
  const rows = sheet.rows.map(({ cost: _, short: __, ...row }) => row);
  const result = becoming(await fireOnBench(caller, studyId, { lines, fire, balance: 0.01 }));
  const { celsius, atmosphere } = fire;
  const sides = { target, tiles: await paintOf(caller, studyId, measured ? specimens : []) };
  const head = { kind: 'bench' as const, ...made(name), note, unit, celsius, atmosphere };
  return { name, payload: { ...head, rows, result, ...sides } };
}

async function nullIfRefused<Value>(work: Promise<Value>): Promise<Value | null> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof RequirementError) return null;
    throw error;
  }
}
