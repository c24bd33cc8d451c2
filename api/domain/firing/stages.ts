import { RequirementError } from '../requirement.ts';
import type { Air, AirStage } from './types.ts';

/**
 * Stages of air in order of time. Throws when one ends before it begins, or begins before the one before has ended,
 * naming it.
 *
 * @example
 * const stages = [{ air: 'smothered', from: 3600, to: 7200, note: null }, { air: 'oxidising', from: 0, to: 3600, note: null }]
 * stagesInOrder(stages).map((s) => s.air) // ['oxidising', 'smothered']
 * stagesInOrder([{ ...stages[0], from: 1800 }, stages[1]]) // throws stages of air may not overlap; smothered begins at 0:30 before oxidising ends at 1:00
 */
export function stagesInOrder(stages: readonly AirStage[]): AirStage[] {
  const backwards = stages.find((s) => !(s.from >= 0 && s.to > s.from && Number.isFinite(s.to)));
  if (backwards)
    throw new RequirementError(
      `a stage of air needs to end after it begins; ${backwards.air} runs from ${hoursMinutes(backwards.from)} to ${hoursMinutes(backwards.to)}`,
    );
  const ordered = stages.toSorted((a, b) => a.from - b.from);
  ordered.slice(1).forEach((stage, i) => {
    const before = ordered[i]!;
    if (stage.from < before.to)
      throw new RequirementError(
        `stages of air may not overlap; ${stage.air} begins at ${hoursMinutes(stage.from)} before ${before.air} ends at ${hoursMinutes(before.to)}`,
      );
  });
  return ordered;
}

/**
 * Seconds as hours and minutes, `h:mm`.
 *
 * @example
 * hoursMinutes(5430) // '1:31'
 * hoursMinutes(-600) // '−0:10'
 */
export function hoursMinutes(seconds: number): string {
  const minutes = Math.abs(Math.round(seconds / 60));
  const sign = seconds < 0 && minutes > 0 ? '−' : '';
  return `${sign}${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

/**
 * A stage of air with its times: `reducing from 0:05 to 0:50 h`.
 *
 * @example
 * stageInWords({ air: 'reducing', from: 300, to: 3000, note: null }) // 'reducing from 0:05 to 0:50 h'
 */
export function stageInWords({ air, from, to }: AirStage): string {
  return `${air} from ${hoursMinutes(from)} to ${hoursMinutes(to)} h`;
}

/**
 * Air since a time, whose end nobody noted.
 *
 * @example
 * openInWords({ air: 'smothered', from: 18600 }) // 'smothered from 5:10 h, its end not noted'
 */
export function openInWords(open: { readonly air: Air; readonly from: number }): string {
  return `${open.air} from ${hoursMinutes(open.from)} h, its end not noted`;
}

/**
 * Whether two records tell of the same stages, in whatever order.
 *
 * @example
 * sameStages([{ air: 'reducing', from: 300, to: 3000, note: null }], [{ air: 'reducing', from: 300, to: 3000, note: null }]) // true
 * sameStages([], [{ air: 'reducing', from: 300, to: 3000, note: null }]) // false
 */
export function sameStages(a: readonly AirStage[], b: readonly AirStage[]): boolean {
  const [these, those] = [a, b].map((stages) =>
    stages.map(({ air, from, to, note }) => `${from} ${to} ${air} ${note ?? ''}`).sort(),
  ) as [string[], string[]];
  return these.length === those.length && these.every((one, i) => one === those[i]);
}
