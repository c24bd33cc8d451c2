import { Fold, Opened } from '../panel/Fold.tsx';
import { DepthSection } from './DepthSection.tsx';
import { DrawsSection } from './DrawsSection.tsx';
import { EstimateSection } from './EstimateSection.tsx';
import { LineSection } from './LineSection.tsx';
import { RecastSection } from './RecastSection.tsx';
import { SlipDrawing } from './SlipDrawing.tsx';
import type { SlipSectionProps } from './section-props.ts';
import { UptakeSection } from './UptakeSection.tsx';

/** Draws the slip off a replica: which slip, how much of it, and what that does to the comparison. */
export function SlipSection(at: SlipSectionProps) {
  const { slip, replica } = at;
  return (
    <section className="sheet slip" aria-labelledby="slip-heading">
      <h2 id="slip-heading">Slip in the paint of {replica.label}</h2>
      {slip.shelf.slips.length === 0 && (
        <p className="small faint">No slip has been analysed in this study; enter one to draw it off.</p>
      )}
      <SlipDrawing {...at} withSigma />
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
        <Fold title="On a line" gist="Slip, paint and what is left">
          <Opened>
            <LineSection {...at} />
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
