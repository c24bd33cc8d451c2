import { DistanceViews } from './DistanceViews.tsx';
import { PairView } from './PairView.tsx';
import { TernaryView } from './TernaryView.tsx';
import type { OtherViewProps } from './view-props.ts';

/** The same comparison looked at in other ways; none is worked out before it is opened. */
export function OtherViews(at: OtherViewProps) {
  return (
    <section className="stack" aria-labelledby="views-heading">
      <h2 id="views-heading">Other views</h2>
      <div>
        <PairView {...at} />
        <TernaryView {...at} />
        <DistanceViews {...at} />
      </div>
    </section>
  );
}
