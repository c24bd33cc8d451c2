import { setImmediate as breathe } from 'node:timers/promises';
import type { ComparisonRequest } from '../contract/placement.ts';
import type {
  DrawOffAnswer,
  DrawOffRequest,
  SlipSamples,
  SlipSamplesRequest,
  UncertaintyAnswer,
  UncertaintyAsked,
} from '../contract/slip.ts';
import type { SlipChoice } from '../contract/slip-choice.ts';
import type { Sample } from '../domain/composition/types.ts';
import { placeSample } from '../domain/placement/place.ts';
import { RequirementError } from '../domain/requirement.ts';
import { lackingIn } from '../domain/slip/lacking.ts';
import { mixingPath } from '../domain/slip/mixing-path.ts';
import { drawOffSample } from '../domain/slip/sample.ts';
import { slipFor } from '../domain/slip/slip-source.ts';
import { likeWithLike, type SlipState } from '../domain/slip/slip-state.ts';
import type { Analysed } from '../domain/slip/types.ts';
import { drawPlacements } from '../domain/uncertainty/draw-placements.ts';
import { forgetAssumed } from '../domain/uncertainty/forget-assumed.ts';
import { type Caller, requireStudy } from './access.ts';
import { compare } from './comparison.ts';
import { basisOf, readMeasured, readSlips } from './slip-samples.ts';

/** Slip and body analyses of a study as a calculation takes them. */
export async function listSlipSamples(
  caller: Caller,
  studyId: string,
  { measured, ...basis }: SlipSamplesRequest,
): Promise<SlipSamples> {
  await requireStudy(caller, studyId);
  const read = await Promise.all(
    measured.map((one) => readMeasured(caller, studyId, { ...basis, measured: one, specimens: null })),
  );
  const answer = {
    samples: read.flatMap(({ samples }) => samples),
    excluded: read.flatMap(({ excluded }) =>
      excluded.map(({ specimen, label, reason }) => ({ specimen, label, reason })),
    ),
  };
  return answer as SlipSamples;
}

/** Places one specimen with its slip drawn off, and says how far it could be drawn. */
export async function drawSlipOff(
  caller: Caller,
  studyId: string,
  { comparison, choice }: DrawOffRequest,
): Promise<DrawOffAnswer> {
  const { model, sample, slip, drawn: others } = await setUp(caller, studyId, { comparison, choice });
  const { f, unmeasured, from, sigma } = choice;
  const { fraction } = comparison.settings.replacement;
  const options = { unmeasured, fraction };
  lackingIn(slip!, model.parts, unmeasured);
  const { sample: left, spent, dropped } = drawOffSample(sample, slip!, { f, ...options });
  const path = mixingPath(model, sample, { slip: slip!, ...options });
  const out = new Map(others.map((one) => [one.specimen, one]));
  const references = model.members.map(({ id }): SlipState => {
    const drawn = out.get(id);
    return drawn ? { kind: 'out', f: drawn.f, from: drawn.from } : { kind: 'in' };
  });
  const own: SlipState = f === 0 ? { kind: 'in' } : { kind: 'out', f, from };
  const bounded = (x: number) => (Number.isFinite(x) ? x : null);
  const { id: specimen, label, role } = sample;
  const answer = {
    placement: placeSample(model, left),
    drawn: { specimen, label, role, slip: slip!.label, f, sigma, from, spent, dropped },
    limit: {
      ...path.limit,
      byOxide: path.limit.byOxide.map((one) => ({
        oxide: one.oxide,
        f: bounded(one.f),
        strict: bounded(one.strict),
      })),
    },
    path: path.points,
    likeWithLike: likeWithLike(
      { name: label, states: [own] },
      { name: 'the references', states: references },
    ),
  };
  return answer as unknown as DrawOffAnswer;
}

/** Carries uncertainties through drawing off and placing. The event loop gets its turn between blocks of draws. */
export async function drawUncertainty(
  caller: Caller,
  studyId: string,
  { comparison, specimen, choice, settings }: UncertaintyAsked,
): Promise<UncertaintyAnswer> {
  const { model, sample, slip } = await setUp(caller, studyId, { comparison, choice, specimen });
  const { assumedRelative } = settings;
  const own = <Side extends Analysed>(side: Side): Side =>
    assumedRelative === null ? side : { ...side, amounts: forgetAssumed(side.amounts) };
  const { f, sigma, df, from, unmeasured } = choice ?? {
    f: 0,
    sigma: 0,
    df: null,
    from: '',
    unmeasured: 'drop',
  };
  const steps = drawPlacements(model, {
    sample: own(sample),
    slip: slip && { analysed: own(slip), fraction: { f, sigma, df, from } },
    settings: { ...settings, unmeasured: unmeasured === 'none' ? 'none' : 'refuse' },
  });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value as UncertaintyAnswer;
    await breathe();
  }
}

interface SetUp {
  readonly comparison: ComparisonRequest;
  readonly choice: SlipChoice | null;
  readonly specimen?: string;
}

/** The model, the specimen as measured, and its slip. Slip is drawn off the others as the comparison says. */
async function setUp(caller: Caller, studyId: string, { comparison, choice, ...at }: SetUp) {
  await requireStudy(caller, studyId);
  const specimen = at.specimen ?? choice!.specimen;
  const others = comparison.slip.filter((one) => one.specimen !== specimen);
  const asked = { ...comparison, slip: others };
  const { model, replicas, excluded, slip: drawn } = await compare(caller, studyId, asked);
  const sample = (replicas as readonly Sample[]).find(({ id }) => id === specimen);
  if (!sample) {
    const why = excluded.find((one) => one.specimen === specimen)?.reason ?? 'it is not among its replicas';
    throw new RequirementError(`drawing slip off needs a specimen that is placed in the comparison; ${why}`);
  }
  const shelf = choice && (await readSlips(caller, studyId, basisOf(comparison)));
  return { model, sample, drawn, slip: shelf && choice && slipFor(choice.source, sample, shelf) };
}
