import { type ReactNode, useContext, useId } from 'react';
import { DisclosureStateContext } from 'react-aria-components';
import type { SlipSource } from '../../../../api/domain/slip/slip-source.ts';
import { useSourceValue } from '../../../parts/figure/useSource.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Tick } from '../../../parts/Tick.tsx';
import { Fold } from '../panel/Fold.tsx';
import { NumberBox } from '../panel/NumberBox.tsx';
import { choose, HAND } from './choices.ts';
import { DepthSection } from './DepthSection.tsx';
import { DrawsSection } from './DrawsSection.tsx';
import { EstimateSection } from './EstimateSection.tsx';
import { FractionSlider } from './FractionSlider.tsx';
import { most, type Slipped } from './placer.ts';
import { RecastSection } from './RecastSection.tsx';
import { SourceChoice } from './SourceChoice.tsx';
import type { SlipSectionProps } from './section-props.ts';
import { UptakeSection } from './UptakeSection.tsx';
import { useNow } from './useSlip.ts';
import { limitWords, shareWords, sidesOf, stateOf } from './words.ts';

/** Draws the slip off a replica: which slip, how much of it, and what that does to the comparison. */
export function SlipSection(at: SlipSectionProps) {
  const { slip, replica } = at;
  const source = useNow(slip, replica.id, (now) => now?.choice?.source ?? null);
  const onChoose = (next: SlipSource | null) =>
    choose(slip.choices, replica.id, next && { source: next, f: slip.choices.get()[replica.id]?.f ?? 0 });
  return (
    <section className="sheet slip" aria-labelledby="slip-heading">
      <h2 id="slip-heading">Slip in the paint of {replica.label}</h2>
      <div className="slip-choice">
        <SourceChoice shelf={slip.shelf} specimen={replica.id} source={source} onChoose={onChoose} />
      </div>
      {slip.shelf.slips.length === 0 && (
        <p className="small faint">No slip has been analysed in this study; enter one to draw it off.</p>
      )}
      <Drawing {...at} />
      <div className="folds">
        <Fold title="How much slip?" gist="An estimate of f">
          <Opened>
            <EstimateSection {...at} />
          </Opened>
        </Fold>
        <Fold title="How sure is this?" gist="Uncertainties carried">
          <Opened>
            <DrawsSection {...at} />
          </Opened>
        </Fold>
        <Fold title="Lead alone, or with silica?" gist="Recast beside body and slip">
          <Opened>
            <RecastSection {...at} />
          </Opened>
        </Fold>
        <Fold title="How deep is it read?" gist="Paint or slip, oxide by oxide">
          <Opened>
            <DepthSection {...at} />
          </Opened>
        </Fold>
        <Fold title="Slip by thickness" gist="Learnt from tiles">
          <Opened>
            <UptakeSection {...at} />
          </Opened>
        </Fold>
      </div>
    </section>
  );
}

/** Asks nothing of the service until its fold is open. */
function Opened({ children }: { readonly children: ReactNode }) {
  return useContext(DisclosureStateContext)?.isExpanded ? children : null;
}

/** What follows the slider at every frame. */
function Drawing(at: SlipSectionProps) {
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

function Share({ slip, replica, now }: SlipSectionProps & { readonly now: Slipped }) {
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
            <NumberBox
              label="± of f"
              hint="One standard uncertainty; 0 takes f as exact"
              value={choice.sigma}
              fault={(sigma) => (sigma >= 0 && sigma <= 1 ? null : 'lies within 0–1')}
              onChange={(sigma) => change({ sigma: sigma ?? 0, df: null })}
            />
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
          Drawn down to nothing within {spent.length === 1 ? 'its' : 'their'} uncertainty, and compared as
          below detection: {spent.map(showAnalyte).join(', ')}.
        </p>
      )}
    </>
  );
}
