import { RequirementError } from '../../../../api/domain/requirement.ts';
import { chemical } from '../../../../api/figures/chemical.ts';

export const oxideChoices = (parts: readonly string[]) =>
  parts.map((oxide) => ({ id: oxide, label: chemical(oxide) }));

/** The oxides with another in one place; one that stands elsewhere already changes places with it. */
export function exchanged<Oxides extends readonly string[]>(
  oxides: Oxides,
  at: number,
  oxide: string,
): Oxides {
  const before = oxides[at]!;
  return oxides.map((one, i) => (i === at ? oxide : one === oxide ? before : one)) as unknown as Oxides;
}

export function requireOxides(oxides: readonly (string | undefined)[], count: number): void {
  const found = oxides.filter((oxide) => oxide !== undefined).length;
  if (found < count)
    throw new RequirementError(
      `this figure shows ${count} oxides; ${found} ${found === 1 ? 'is' : 'are'} compared`,
    );
}
