import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { Notice } from '../../parts/Notice.tsx';
import { count } from '../../parts/numbers.ts';

function cautionFor(group: WareGroup): string | null {
  if (group.specimens === 0) return `${group.name} has no specimens yet.`;
  if (group.analyses === 0) return `${group.name} has ${count(group.specimens, 'specimen')} but no analyses.`;
  if (group.specimens < 4)
    return `${group.name} has ${count(group.specimens, 'specimen')}: too few for a spread of its own (4 needed).`;
  if (group.specimens < 10)
    return `${group.name} has ${group.specimens} specimens: few oxides can be compared at once, and the answer has little power.`;
  return null;
}

/** What to keep in mind before trusting a distance. */
export function GroupCautions({ groups }: { readonly groups: readonly WareGroup[] }) {
  const cautions = groups.map(cautionFor).filter((caution) => caution !== null);
  if (cautions.length === 0) return null;
  return (
    <Notice kind="caution" title="Keep in mind">
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Notice>
  );
}
