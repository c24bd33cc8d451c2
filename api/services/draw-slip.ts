import type { ComparisonRequest, Exclusion } from '../contract/placement.ts';
import type { SlipChoice, SlipDrawnOff } from '../contract/slip-choice.ts';
import type { Sample } from '../domain/composition/types.ts';
import { drawOffSample } from '../domain/slip/sample.ts';
import { type SlipShelf, slipFor } from '../domain/slip/slip-source.ts';
import type { Caller } from './access.ts';
import { attempt } from './failure.ts';
import { basisOf, readSlips } from './slip-samples.ts';

/** Draws the chosen slip off samples as they enter a comparison. */
export interface SlipDrawer {
  /** The sample with its slip drawn off, as it is where none was chosen, null where it cannot be done. */
  readonly draw: (sample: Sample) => Sample | null;
  readonly drawn: () => SlipDrawnOff[];
  readonly refused: () => Exclusion[];
}

export async function slipDrawer(
  caller: Caller,
  studyId: string,
  request: ComparisonRequest,
): Promise<SlipDrawer> {
  const choices = new Map(request.slip.map((choice) => [choice.specimen, choice]));
  const shelf =
    choices.size > 0 ? await readSlips(caller, studyId, basisOf(request)) : { slips: [], names: {} };
  const { fraction } = request.settings.replacement;
  const drawn = new Map<string, SlipDrawnOff>();
  const refused = new Map<string, Exclusion>();
  const draw = (sample: Sample) => {
    const choice = choices.get(sample.id);
    if (!choice || choice.f === 0) return sample;
    const result = attempt(() => drawOne(sample, choice, { shelf, fraction }));
    if ('value' in result) {
      drawn.set(sample.id, result.value.drawn);
      return result.value.sample;
    }
    const { id: specimen, label, group } = sample;
    refused.set(specimen, { specimen, label, group, analysis: null, reason: result.reason });
    return null;
  };
  return { draw, drawn: () => [...drawn.values()], refused: () => [...refused.values()] };
}

function drawOne(
  sample: Sample,
  { source, f, sigma, from, unmeasured }: SlipChoice,
  { shelf, fraction }: { readonly shelf: SlipShelf; readonly fraction: number },
): { sample: Sample; drawn: SlipDrawnOff } {
  const slip = slipFor(source, sample, shelf);
  const { sample: left, spent, dropped } = drawOffSample(sample, slip, { f, unmeasured, fraction });
  const { id: specimen, label, role } = sample;
  return {
    sample: left,
    drawn: {
      ...{ specimen, label, role, slip: slip.label, f, sigma, from },
      ...{ spent: [...spent], dropped: [...dropped] },
    },
  };
}
