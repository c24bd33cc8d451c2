import type { EstimateAnswer, EstimateRequest } from '../../../../api/contract/slip-estimate.ts';
import { SUGGESTED_TRACERS } from '../../../../api/domain/slip/tracers.ts';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { OneOf } from '../../../parts/Tick.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useSlipEstimate } from '../../../queries/slip.ts';
import { TickList } from '../panel/TickList.tsx';
import { choose } from './choices.ts';
import { EstimateView } from './EstimateView.tsx';
import { FiredTarget } from './FiredTarget.tsx';
import { type FiredChoice, NO_TARGET, targetOf } from './fired-choice.ts';
import { GroupLine, type LineChoice, NO_LINE } from './GroupLine.tsx';
import { most } from './placer.ts';
import type { SlipSectionProps } from './section-props.ts';
import { useNow } from './useSlip.ts';

const WAYS = [
  { id: 'tracers', label: 'By tracers', hint: 'Oxides that the paint itself cannot hold' },
  { id: 'batch', label: 'By the batch', hint: 'The fired batch and the slip explain the reading' },
  { id: 'group', label: 'By a ware group’s line', hint: 'Its own paint and slip analyses' },
] as const;
type Way = (typeof WAYS)[number]['id'];

interface Asking {
  readonly way: Way;
  readonly tracers: readonly string[] | null;
  readonly target: FiredChoice;
  readonly line: LineChoice;
}
const START: Asking = { way: 'tracers', tracers: null, target: NO_TARGET, line: NO_LINE };

/** How much of a reading is slip, each way with its interval, what it assumes, and whether it holds together. */
export function EstimateSection(at: SlipSectionProps) {
  const { slip, result, replica } = at;
  const { study } = slip;
  const draft = useDraft<Asking>(`slip-estimate.1.${study}`, START);
  const asking = draft.value;
  const change = (part: Partial<Asking>) => draft.set({ ...asking, ...part });
  const source = useNow(slip, replica.id, (now) => now?.choice?.source);
  const reach = useNow(slip, replica.id, (now) => now?.reach ?? null);
  const oxides = oxidesOf(at);
  const tracers = (asking.tracers ?? SUGGESTED_TRACERS).filter((oxide) => oxides.includes(oxide));
  const request = requestOf(at, { asking, tracers, source });
  const found = useSlipEstimate(study, request);
  return (
    <>
      <OneOf label="How it is told" choices={WAYS} value={asking.way} onChange={(way) => change({ way })} />
      {asking.way === 'tracers' && (
        <TickList
          label="Oxides that the paint holds none of itself"
          items={oxides.map((oxide) => ({ id: oxide, name: oxide, label: showAnalyte(oxide) }))}
          chosen={tracers}
          onChange={(chosen) => change({ tracers: chosen ?? oxides })}
          all="The suggested ones"
        />
      )}
      {asking.way === 'batch' && (
        <FiredTarget study={study} value={asking.target} onChange={(target) => change({ target })} />
      )}
      {asking.way === 'group' && (
        <GroupLine
          groups={result.groups}
          oxides={result.model.parts}
          value={asking.line}
          onChange={(line) => change({ line })}
        />
      )}
      {source === undefined && asking.way !== 'group' && (
        <p className="faint">Choose the slip above first.</p>
      )}
      <div role="status">{found.isFetching && <p className="waiting">Estimating …</p>}</div>
      {request && found.error !== null && (
        <ErrorNotice error={found.error} title="No estimate can be made this way" />
      )}
      {request && found.data && (
        <EstimateView
          answer={found.data as EstimateAnswer}
          onApply={(applied) => choose(slip.choices, replica.id, applied)}
          most={reach && most(reach)}
        />
      )}
    </>
  );
}

function oxidesOf({ result, replica }: SlipSectionProps): string[] {
  return Object.keys(result.replicas.find(({ id }) => id === replica.id)?.amounts ?? {});
}

interface Chosen {
  readonly asking: Asking;
  readonly tracers: readonly string[];
  readonly source: EstimateRequest['source'] | undefined;
}

function requestOf({ result, replica }: SlipSectionProps, chosen: Chosen): EstimateRequest | null {
  const { asking, tracers, source } = chosen;
  const { normalisation, settings } = result.request;
  const basis = { normalisation, fraction: settings.replacement.fraction };
  const specimen = replica.id;
  if (asking.way === 'group') {
    const { group, known } = asking.line;
    if (group === null || Object.keys(known).length === 0) return null;
    const own = source === undefined ? null : specimen;
    return {
      ...basis,
      by: 'group',
      group,
      known,
      oxides: null,
      specimen: own,
      source: source ?? { kind: 'own' },
    };
  }
  if (source === undefined) return null;
  if (asking.way === 'tracers')
    return tracers.length === 0 ? null : { ...basis, by: 'tracers', specimen, source, tracers: [...tracers] };
  const target = targetOf(asking.target);
  return target && { ...basis, by: 'batch', specimen, source, target, oxides: null };
}
