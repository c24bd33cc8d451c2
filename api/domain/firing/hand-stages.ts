import { litAt, type TappedStage, tappedStages } from './fire-marks.ts';
import type { FireLog, FireMark } from './fire-note-types.ts';
import { sameStages, stagesInOrder } from './stages.ts';
import type { AirStage } from './types.ts';

/**
 * A firing's record with its stages of air as someone sends them. A tapped stage that was there and is not sent is
 * taken out for good, by its marks; one that a stage written by hand only hid comes back once that one gives it room.
 * Throws where stages overlap, or one ends before it begins.
 *
 * @example
 * const at = (clock) => ({ noted: `2026-03-01T${clock}Z`, at: `2026-03-01T${clock}Z` })
 * const marks = [{ mark: 'l', kind: 'lit', ...at('10:00:00') }, { mark: 'a', kind: 'air', air: 'reducing', ...at('10:05:00') }, { mark: 'o', kind: 'out', ...at('10:50:00') }]
 * const hidden = { marks, readings: [], stages: [{ air: 'oxidising', from: 2000, to: 4000, note: null }] }
 * const back = changeStages(hidden, [])
 * back.stages // [{ air: 'reducing', from: 300, to: 3000, note: null }]
 * changeStages(back, []).stages // []
 * changeStages(back, [{ air: 'neutral', from: 60, to: 0, note: null }]) // throws a stage of air needs to end after it begins
 */
export function changeStages(log: FireLog, sent: readonly AirStage[]): FireLog {
  const [lit, stages] = [litAt(log.marks), stagesInOrder(sent)];
  const tapped = tappedStages(log.marks, lit);
  const out = new Set(
    tapped
      .filter(({ stage }) => log.stages.some(same(stage)) && !stages.some(same(stage)))
      .flatMap((one) => one.marks),
  );
  const marks = log.marks.map((one): FireMark => (out.has(one.mark) ? { ...one, takenOut: true } : one));
  return { ...log, marks, stages: together(byHand(stages, tapped), tappedStages(marks, lit)) };
}

/**
 * A record's stages of air once its marks are others: those written by hand stay, and those tapped follow the marks.
 *
 * @example
 * const at = (clock) => ({ noted: `2026-03-01T${clock}Z`, at: `2026-03-01T${clock}Z` })
 * const marks = [{ mark: 'l', kind: 'lit', ...at('10:00:00') }, { mark: 'a', kind: 'air', air: 'reducing', ...at('10:05:00') }]
 * const log = { marks, readings: [], stages: [] }
 * restaged(log, [...marks, { mark: 'o', kind: 'out', ...at('10:50:00') }]) // [{ air: 'reducing', from: 300, to: 3000, note: null }]
 */
export function restaged(log: FireLog, marks: readonly FireMark[]): AirStage[] {
  const were = tappedStages(log.marks, litAt(log.marks));
  return together(byHand(log.stages, were), tappedStages(marks, litAt(marks)));
}

const same = (a: AirStage) => (b: AirStage) => sameStages([a], [b]);

/** One that was taken out and written in again by hand is of the hand. */
const byHand = (stages: readonly AirStage[], tapped: readonly TappedStage[]) =>
  stages.filter((one) => !tapped.some(({ stage, takenOut }) => !takenOut && same(stage)(one)));

function together(written: readonly AirStage[], tapped: readonly TappedStage[]): AirStage[] {
  const apart = ({ from, to }: AirStage) => written.every((each) => to <= each.from || each.to <= from);
  const shown = tapped.filter(({ stage, takenOut }) => !takenOut && apart(stage));
  return stagesInOrder([...written, ...shown.map((one) => one.stage)]);
}
