import { plainName } from './element-names.ts';
import type { Contribution, GroupPlacement } from './types.ts';
import { factorInWords, fractionInWords } from './words.ts';

/** The gap is named by as many oxides as make up this much of it, at most three, none below a tenth. */
const ENOUGH = 0.6;
const MOST = 3;
const LEAST_SHARE = 0.1;
/** When the largest share is below this, the gap is spread over all oxides. */
const SPREAD_OUT = 0.2;
/** An oxide stands out of a group's own spread from this many standard deviations on. */
const STANDS_OUT = 3;

type Gap = Pick<GroupPlacement, 'verdict' | 'contributions'>;

const upperFirst = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** `0.40`, `62`: two figures. */
function figures(wt: number): string {
  const text = wt.toPrecision(2);
  return text.includes('e') ? String(Number(text)) : text;
}

/** Whether a factor is against all oxides and not wt% over wt%. */
const isRelative = ({ factor, measured, centre }: Contribution) =>
  Math.abs(factor * centre - measured) > 1e-6 * measured;

/** How far off an oxide is, and both wt%: where one oxide fills up, all others fall in wt% though nothing else changed. */
function off(c: Contribution, first: boolean): string {
  const against = first && isRelative(c) ? ' against all oxides together' : '';
  return `${factorInWords(c.factor)}${against} (${figures(c.measured)} wt%, ${figures(c.centre)} at the centre)`;
}

function named(
  c: Contribution,
  { undetected, first }: { undetected: readonly string[]; first: boolean },
): string {
  const name = plainName(c.oxide);
  return undetected.includes(c.oxide) ? `${name}, not detected in it` : `${name}, ${off(c, first)}`;
}

/** The oxides that make up most of the squared distance, largest first. */
function largest(contributions: readonly Contribution[]): Contribution[] {
  const sorted = contributions.toSorted((a, b) => b.share - a.share);
  let sum = 0;
  const few = sorted.findIndex((c) => {
    sum += c.share;
    return sum >= ENOUGH;
  });
  return sorted.slice(0, Math.min(few + 1, MOST)).filter((c) => c.share >= LEAST_SHARE);
}

const deviations = (c: Contribution) => Math.abs(c.z ?? 0);

/** An oxide with a small share that still lies further out of the group's narrow spread than those named. */
function outstanding(contributions: readonly Contribution[], told: readonly Contribution[]): Contribution[] {
  const most = contributions.reduce((a, b) => (deviations(b) > deviations(a) ? b : a));
  const least = Math.max(STANDS_OUT, ...told.map((c) => 1.5 * deviations(c)));
  return told.includes(most) || deviations(most) < least ? [] : [most];
}

/**
 * Sentences on what sets a sample apart from a group: the oxides that make up most of the squared distance, and by
 * what factor each is off, with both wt% (in log-ratios the factor is against the geometric mean of all oxides, which
 * the words say); and one that stands out of the group's own spread though its share is small. None for a
 * sample that cannot be told apart.
 *
 * @example
 * const contributions = [{ oxide: 'PbO', measured: 40, centre: 62, share: 0.8, factor: 0.5556, z: 2 }, { oxide: 'TiO2', measured: 0.4, centre: 0.3, share: 0.2, factor: 1.2, z: 6.1 }];
 * gapInWords({ verdict: 'outside', contributions }, [])[0] // 'Four fifths of the gap is lead, 1.8 times too low against all oxides together (40 wt%, 62 at the centre).'
 * gapInWords({ verdict: 'outside', contributions }, [])[1] // 'Against the group’s own spread titanium stands out most: 1.2 times too high (0.40 wt%, 0.30 at the centre), 6.1 standard deviations.'
 * gapInWords({ verdict: 'inside', contributions }, []) // []
 */
export function gapInWords({ verdict, contributions }: Gap, undetected: readonly string[]): string[] {
  if (verdict === 'inside') return [];
  const told = largest(contributions);
  const [first, ...rest] = told;
  const most = first && first.share >= SPREAD_OUT ? told : [];
  const main =
    first && most.length > 0
      ? upperFirst(
          [
            `${fractionInWords(first.share)} of the gap is ${named(first, { undetected, first: true })}`,
            ...rest.map(
              (c) =>
                `${fractionInWords(c.share)} is ${named(c, { undetected, first: undetected.includes(first.oxide) })}`,
            ),
          ].join('; '),
        )
      : 'The gap is spread over many oxides';
  const apart = outstanding(contributions, most).map((c) => {
    const how = undetected.includes(c.oxide) ? 'not detected in it' : off(c, most.length === 0);
    return `Against the group’s own spread ${plainName(c.oxide)} stands out most: ${how}, ${deviations(c).toFixed(1)} standard deviations`;
  });
  return [main, ...apart].map((text) => `${text}.`);
}
