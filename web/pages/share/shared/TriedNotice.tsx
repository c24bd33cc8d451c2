import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { type Tried, useIsTried } from './tried.ts';

/** Says which is on the page, the placement as it was kept or one the visitor tries, and leads back. */
export function TriedNotice(at: {
  readonly tried: Tried | null;
  /** The sentence as it was kept, to be read beside what is tried. */
  readonly kept: string | undefined;
}) {
  const isTried = useIsTried(at.tried);
  if (!at.tried || !isTried) return null;
  const { slip, asKept } = at.tried;
  return (
    <Notice kind="caution" title="Tried by you, not as kept">
      <p>The sentence, the plot and the tables of placements below follow the slip you chose.</p>
      {at.kept && <p>As kept: {at.kept}</p>}
      <div>
        <Button onPress={() => slip.choices.set(asKept)}>Back to as kept</Button>
      </div>
    </Notice>
  );
}
