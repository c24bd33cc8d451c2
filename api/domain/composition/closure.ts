import { RequirementError } from '../requirement.ts';

/**
 * Scales parts so that they sum to a total: total·x/Σx. Zeros stay zero.
 * Throws when a part is negative or not finite, or when all parts are zero.
 * @example
 * closure([1, 1, 2]) // [25, 25, 50]
 * closure([3, 1], 1) // [0.75, 0.25]
 * closure([0, 0]) // throws closure needs a sum above zero
 */
export function closure(parts: readonly number[], total = 100): number[] {
  let sum = 0;
  for (const [at, part] of parts.entries()) {
    if (!(part >= 0 && part < Infinity))
      throw new RequirementError(partMessage('closure needs parts of zero or more', parts, at));
    sum += part;
  }
  if (!(sum > 0 && sum < Infinity))
    throw new RequirementError(`closure needs a sum above zero; ${parts.length} parts sum to ${sum}`);
  return parts.map((part) => (part / sum) * total);
}

/**
 * The sentence for a part that breaks a requirement: which part, of how many, and its value.
 * @example
 * partMessage('clr needs positive parts', [2, 0], 1) // 'clr needs positive parts; part 2 of 2 is 0'
 */
export function partMessage(requirement: string, parts: readonly unknown[], at: number): string {
  return `${requirement}; part ${at + 1} of ${parts.length} is ${parts[at]}`;
}
