import { lazy, type ReactNode } from 'react';
import type { FrozenKind } from '../../../../api/contract/shared.ts';
import type { OfShare } from './DataFiles.tsx';
import { SharedPlacement } from './SharedPlacement.tsx';

const SharedOutcome = lazy(() => import('./SharedOutcome.tsx'));
const SharedBench = lazy(() => import('./SharedBench.tsx'));

/** Whatever was frozen, from the service or from a file. */
export function SharedThing({ shared, ...at }: OfShare<FrozenKind> & { readonly children?: ReactNode }) {
  if (shared.kind === 'placement') return <SharedPlacement shared={shared} {...at} />;
  if (shared.kind === 'outcome') return <SharedOutcome shared={shared} {...at} />;
  return <SharedBench shared={shared} {...at} />;
}
