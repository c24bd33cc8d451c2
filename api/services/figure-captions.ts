import { RequirementError } from '../domain/requirement.ts';

/** The caption of each figure; of one that cannot be drawn, the reason. */
export async function captionsOf<Name extends string>(
  names: readonly Name[],
  prepare: (name: Name) => Promise<{ readonly caption: string }>,
): Promise<Record<string, string>> {
  const captions: Record<string, string> = {};
  for (const name of names)
    captions[name] = await prepare(name).then(
      ({ caption }) => caption,
      (error: unknown) => {
        if (error instanceof RequirementError) return `No such figure: ${error.message}.`;
        throw error;
      },
    );
  return captions;
}
