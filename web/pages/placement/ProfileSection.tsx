import { useMemo } from 'react';
import { groupSpokenOf } from '../../../api/domain/placement/sentence.ts';
import type { Placement } from '../../../api/domain/placement/types.ts';
import type { Theme } from '../../../api/figures/figure.ts';
import { oxideProfile } from '../../../api/figures/oxide-profile.ts';
import type { ProfileData } from '../../../api/figures/profile-data.ts';
import { profileData } from '../../../api/figures/profile-from-model.ts';
import { profileHeight } from '../../../api/figures/profile-layout.ts';
import { FigureDownload } from '../../parts/figure/FigureDownload.tsx';
import { FigureView } from '../../parts/figure/FigureView.tsx';
import { useSourceOf } from '../../parts/figure/useSource.ts';
import { Select } from '../../parts/Select.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { Fold } from './panel/Fold.tsx';
import { ContributionsTable } from './tables/ContributionsTable.tsx';
import type { LookProps } from './Verdict.tsx';

const BASES: readonly { id: ProfileData['basis']; label: string }[] = [
  { id: 'ratio', label: 'Times the group’s centre' },
  { id: 'amount', label: 'Amounts, wt%' },
];
export interface ProfileSectionProps extends LookProps {
  readonly placement: Placement;
  readonly slots: Readonly<Record<string, number>>;
}

/** Oxide by oxide against one group, and the same in figures. */
export function ProfileSection(at: ProfileSectionProps) {
  const { placement, view } = at;
  const group = placement.groups.find((one) => one.group === view.against) ?? groupSpokenOf(placement.groups);
  if (group === undefined) return null;
  return (
    <section className="stack" aria-labelledby="profile-heading">
      <h2 id="profile-heading">Oxide by oxide against {group.name}</h2>
      <p className="faint">The oxides that hold {placement.label} off the group most come first.</p>
      <Profile {...at} group={group.group} />
      <Fold title="The same in figures">
        <ContributionsTable label={placement.label} group={group} />
      </Fold>
    </section>
  );
}

const heightFor = (data: ProfileData, width: number, theme: Theme) => profileHeight(data, width, theme);

function Profile({
  result,
  view,
  onView,
  placement,
  slots,
  group,
}: ProfileSectionProps & { readonly group: string }) {
  const { model, placements } = result;
  const { basis, others } = view;
  const data = useMemo(() => {
    const shown = others ? placements : [placement];
    const choices = { id: 'profile', group, slot: slots[group] ?? 0, basis, chosen: placement.id };
    return profileData(model, shown, choices)!;
  }, [model, placements, placement, group, slots, basis, others]);
  const source = useSourceOf(data);
  return (
    <>
      <div className="sheet figure-sheet stack tight">
        <FigureView figure={oxideProfile} source={source} height={heightFor} />
        <div>
          <FigureDownload figure={oxideProfile} source={source} height={heightFor} name="oxides" />
        </div>
      </div>
      <div className="look">
        <div className="wide">
          <Select label="Shown as" choices={BASES} value={basis} onChange={(id) => onView({ basis: id })} />
        </div>
        <span className="row ticks">
          <Tick isSelected={others} onChange={(on) => onView({ others: on })}>
            The other replicas too
          </Tick>
        </span>
      </div>
    </>
  );
}
