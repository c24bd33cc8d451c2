import { figureLook } from '../contract/figure.ts';
import type { NewShare } from '../contract/share.ts';
import type { Caller } from './access.ts';
import { readKept, textOf } from './placement-figures.ts';
import { readPlacement } from './placements.ts';
import { freezeBench, freezeOutcome } from './share-freeze-bench.ts';
import type { Frozen, PlacementPayload, SheetPayload } from './share-payload.ts';
import { slipsToShare } from './share-slips.ts';
import { sheetOfStudy } from './sheet-notes.ts';

export function freezeShare(caller: Caller, studyId: string, wish: NewShare): Promise<Frozen> {
  if (wish.kind === 'outcome') return freezeOutcome(caller, studyId, wish);
  if (wish.kind === 'bench') return freezeBench(caller, studyId, wish);
  if (wish.kind === 'sheet') return openSheet(caller, studyId, wish.firing);
  return freezePlacementShare(caller, studyId, wish.placement);
}

export async function freezePlacementShare(
  caller: Caller,
  studyId: string,
  placementId: string,
): Promise<Frozen<PlacementPayload>> {
  const placement = await readPlacement(caller, studyId, placementId);
  const kept = await readKept(caller, studyId, placementId);
  const text = textOf(kept, figureLook.parse({}));
  const slips = await slipsToShare(caller, studyId, kept.result);
  const data = kept.frozen ? kept.data : null;
  return { name: placement.name, payload: { kind: 'placement', placement, text, slips, data } };
}

async function openSheet(caller: Caller, studyId: string, firing: string): Promise<Frozen<SheetPayload>> {
  const { name } = (await sheetOfStudy(caller, studyId, firing)).firing;
  return { name, payload: { kind: 'sheet', firing, name } };
}
