import { type ReactNode, useMemo } from 'react';
import type { StoredMaterial } from '../../../../api/contract/material.ts';
import type { StoredRoast } from '../../../../api/contract/roast.ts';
import { type BenchShelf, buildShelf } from '../../../../api/domain/batch/bench-shelf.ts';
import { Loaded } from '../../../parts/Loaded.tsx';
import { useMaterials, useRoasts } from '../../../queries/bench.ts';

/** What stands on the shelf, and the entries it was computed from. */
export interface Bench {
  readonly shelf: BenchShelf;
  readonly materials: readonly StoredMaterial[];
  readonly roasts: readonly StoredRoast[];
}

interface WithShelfProps {
  readonly study: string;
  readonly children: (bench: Bench) => ReactNode;
}

/** Lets a page through with the shelf computed, here in the page, by the code that the service runs. */
export function WithShelf({ study, children }: WithShelfProps) {
  const materials = useMaterials(study);
  const roasts = useRoasts(study);
  return (
    <Loaded query={materials} what="the materials" page>
      {(own) => (
        <Loaded query={roasts} what="the roasts" page>
          {(roasted) => (
            <Shelved materials={own} roasts={roasted}>
              {children}
            </Shelved>
          )}
        </Loaded>
      )}
    </Loaded>
  );
}

function Shelved({
  materials,
  roasts,
  children,
}: Omit<Bench, 'shelf'> & { readonly children: (bench: Bench) => ReactNode }) {
  const shelf = useMemo(() => buildShelf(materials, roasts), [materials, roasts]);
  return <>{children({ shelf, materials, roasts })}</>;
}
