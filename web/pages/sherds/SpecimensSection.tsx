import { useEffect, useState } from 'react';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { Button } from '../../parts/Button.tsx';
import { DataTable, type Sort } from '../../parts/DataTable.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { Paging } from '../../parts/Paging.tsx';
import { useSpecimens } from '../../queries/specimens.ts';
import { ChosenSpecimens } from './ChosenSpecimens.tsx';
import { SpecimenDialog } from './SpecimenDialog.tsx';
import { SpecimenFilters } from './SpecimenFilters.tsx';
import { specimenColumns } from './specimen-columns.tsx';
import { useSpecimenView } from './useSpecimenView.ts';

const PER_PAGE = 50;

/** Brings the list into sight and moves the keyboard there. */
export function showSpecimens() {
  const heading = document.getElementById('specimens');
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}

/** Every specimen of a study: found, sorted, put into groups. */
export function SpecimensSection({
  study,
  groups,
}: {
  readonly study: string;
  readonly groups: readonly WareGroup[];
}) {
  const { view, change } = useSpecimenView();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [creating, setCreating] = useState(false);
  const specimens = useSpecimens(study, { ...view, limit: PER_PAGE });
  useEffect(() => {
    if (location.hash === '#specimens') showSpecimens();
  }, []);
  const sort: Sort = { column: view.sort, direction: view.direction };
  return (
    <section className="stack" aria-labelledby="specimens">
      <div className="section-head">
        <h2 id="specimens" tabIndex={-1}>
          Specimens
        </h2>
        <Button onPress={() => setCreating(true)}>New specimen</Button>
      </div>
      <SpecimenFilters groups={groups} view={view} onChange={change} />
      <Loaded query={specimens} what="the specimens">
        {({ total, rows }) => (
          <>
            {chosen.size > 0 && (
              <ChosenSpecimens
                study={study}
                groups={groups}
                chosen={chosen}
                onDone={() => setChosen(new Set())}
              />
            )}
            {rows.length > 0 && (
              <DataTable
                label="Specimens"
                columns={specimenColumns({ study, groups, rows, chosen, setChosen })}
                rows={rows}
                rowKey={(row) => row.id}
                sort={sort}
                onSort={({ column, direction }) => change({ sort: column as typeof view.sort, direction })}
              />
            )}
            {rows.length > 1 && chosen.size === 0 && (
              <div>
                <Button look="quiet" onPress={() => setChosen(new Set(rows.map((row) => row.id)))}>
                  Choose all {rows.length} shown
                </Button>
              </div>
            )}
            {rows.length === 0 && total > 0 && (
              <div>
                <Button onPress={() => change({ offset: 0 })}>To the first specimens</Button>
              </div>
            )}
            {total === 0 && <p className="faint">No specimen answers to this.</p>}
            <Paging
              total={total}
              offset={view.offset}
              limit={PER_PAGE}
              noun="specimen"
              onOffset={(offset) => change({ offset })}
            />
          </>
        )}
      </Loaded>
      <SpecimenDialog
        study={study}
        groups={groups}
        specimen={creating ? 'new' : null}
        onClose={() => setCreating(false)}
      />
    </section>
  );
}
