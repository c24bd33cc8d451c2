import type {
  ChanceAnswer,
  ChanceAsked,
  FoundFactor,
  NextTileAnswer,
  NextTileAsked,
  TrialAnswer,
  TrialAsked,
} from '../contract/trial.ts';
import { analyseTrial } from '../domain/trials/analyse.ts';
import { predictChance } from '../domain/trials/chance.ts';
import { proposeTile } from '../domain/trials/next-tile.ts';
import type { ChanceRequest, NextTileRequest, Zone } from '../domain/trials/types.ts';
import type { Caller } from './access.ts';
import { Failure } from './failure.ts';
import { listFirings } from './firings.ts';
import { listTiles } from './tiles.ts';
import { factorsIn, trialZones } from './trial-zones.ts';

/** What was varied in the study: names, settings, and how many zones have them noted. */
export async function trialFactors(caller: Caller, studyId: string): Promise<FoundFactor[]> {
  const zones = await zonesOf(caller, studyId);
  return factorsIn(zones, await listFirings(caller, studyId));
}

/** What mattered, from the zones of chosen tiles. */
export async function analyseStudyTrial(
  caller: Caller,
  studyId: string,
  { tiles, ...request }: TrialAsked,
): Promise<TrialAnswer> {
  return analyseTrial(await zonesOf(caller, studyId, tiles), request) as TrialAnswer;
}

/** The chance of a glossy zone against one factor. */
export async function chanceInStudy(
  caller: Caller,
  studyId: string,
  { tiles, ...request }: ChanceAsked,
): Promise<ChanceAnswer> {
  const zones = await zonesOf(caller, studyId, tiles);
  return predictChance(zones, request as ChanceRequest) as ChanceAnswer;
}

/** The next tile that would tell most. */
export async function nextTileOfStudy(
  caller: Caller,
  studyId: string,
  { tiles, ...request }: NextTileAsked,
): Promise<NextTileAnswer> {
  const zones = await zonesOf(caller, studyId, tiles);
  return proposeTile(zones, request as NextTileRequest) as unknown as NextTileAnswer;
}

export async function zonesOf(caller: Caller, studyId: string, chosen?: readonly string[]): Promise<Zone[]> {
  const all = await listTiles(caller, studyId);
  const lost = (chosen ?? []).find((id) => all.every((tile) => tile.id !== id));
  if (lost !== undefined)
    throw new Failure('invalid', 'every tile asked for must be in this study; one or more are not.');
  const tiles = chosen === undefined ? all : all.filter((tile) => chosen.includes(tile.id));
  return trialZones(tiles, await listFirings(caller, studyId));
}
