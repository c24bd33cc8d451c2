import { useId } from 'react';
import type { SlipSource } from '../../../../api/domain/slip/slip-source.ts';
import { useSourceValue } from '../../../parts/figure/useSource.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Tick } from '../../../parts/Tick.tsx';
import { NumberBox } from '../panel/NumberBox.tsx';
import { choose, HAND } from './choices.ts';
import { FractionSlider } from './FractionSlider.tsx';
import { most, type Slipped } from './placer.ts';
import { SourceChoice } from './SourceChoice.tsx';
import type { SlipSectionProps } from './section-props.ts';
import { useNow } from './useSlip.ts';
import { limitWords, shareWords, sidesOf, stateOf } from './words.ts';

interface DrawingProps extends SlipSectionProps {
  /** Whether the uncertainty of the share is asked for, where something is made of it. */
  readonly withSigma: boolean;
}

/** Which slip, how much of it, and whether both sides then have it out. */
export function SlipDrawing(at: DrawingProps) {
  const { slip, replica } = at;
  const source = useNow(slip, replica.id, (now) => now?.choice?.source ?? null);
  const onChoose = (next: SlipSource | null) =>
    choose(slip.choices, replica.id, next && { source: next, f: slip.choices.get()[replica.id]?.f ?? 0 });
  return (
    <>
      <div className="slip-choice">
        <SourceChoice shelf={slip.shelf} specimen={replica.id} source={source} onChoose={onChoose} />
      </div>
      <Followed {...at} />
    </>
  );
}

/** What follows the slider at every frame. */
function Followed(at: DrawingProps) {
  const now = useSourceValue(at.slip.live)?.byId.get(at.replica.id);
  const choice = now?.refusal ? null : (now?.choice ?? null);
  const sides = sidesOf(at.result, at.replica.label, stateOf(choice));
  return (
    <>
      {now && <Share {...at} now={now} />}
      <p className={sides.alike ? 'small faint' : 'small'} role="status">
        {sides.sentence}
      </p>
    </>
  );
}

function Share({ slip, replica, now, withSigma }: DrawingProps & { readonly now: Slipped }) {
  const { choice, reach, refusal, lacking, spent } = now;
  const limit = useId();
  const change = (part: Parameters<typeof choose>[2]) => choose(slip.choices, replica.id, part);
  if (choice === null) return null;
  return (
    <>
      {reach && (
        <>
          <div className="slip-share">
            <FractionSlider
              value={choice.f}
              most={most(reach)}
              words={shareWords(choice)}
              describedBy={limit}
              onChange={(f) => change({ f, sigma: 0, df: null, from: HAND })}
            />
            {withSigma && (
              <NumberBox
                label="± of f"
                hint="One standard uncertainty; 0 takes f as exact"
                value={choice.sigma}
                fault={(sigma) => (sigma >= 0 && sigma <= 1 ? null : 'lies within 0–1')}
                onChange={(sigma) => change({ sigma: sigma ?? 0, df: null })}
              />
            )}
          </div>
          <p id={limit} className="small faint">
            {limitWords(reach)}
          </p>
        </>
      )}
      {lacking.length > 0 && (
        <Tick
          isSelected={choice.unmeasured === 'none'}
          onChange={(on) => change({ unmeasured: on ? 'none' : 'drop' })}
        >
          Take the slip to hold no {lacking.map(showAnalyte).join(', no ')}, for which it was not measured
        </Tick>
      )}
      {refusal && (
        <Notice kind="caution" title="The slip cannot be drawn off">
          <p>{refusal}</p>
        </Notice>
      )}
      {spent.length > 0 && (
        <p className="small">
          Drawn down to less than twice {spent.length === 1 ? 'its' : 'their'} uncertainty, and compared as
          below detection: {spent.map(showAnalyte).join(', ')}.
        </p>
      )}
    </>
  );
}
