import { useState } from 'react';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { Button } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { ErrorNotice } from '../../parts/Notice.tsx';
import { count } from '../../parts/numbers.ts';
import { Select } from '../../parts/Select.tsx';
import { useChangeSpecimens, useDeleteSpecimens } from '../../queries/specimens.ts';
import { groupChoices, NO_GROUP } from './SpecimenDialog.tsx';

/** What can be done to several specimens at once. */
export function ChosenSpecimens(at: {
  readonly study: string;
  readonly groups: readonly WareGroup[];
  readonly chosen: ReadonlySet<string>;
  readonly onDone: () => void;
}) {
  const [group, setGroup] = useState<string | null>(null);
  const move = useChangeSpecimens(at.study);
  const remove = useDeleteSpecimens(at.study);
  const specimens = [...at.chosen];
  const words = count(specimens.length, 'specimen');
  const change = { group: group === NO_GROUP ? null : group };
  return (
    <section className="sheet stack" aria-label="Chosen specimens">
      <div className="row base">
        <strong role="status" className="chosen-count">
          {words} chosen
        </strong>
        <Select
          label="Put into ware group"
          choices={groupChoices(at.groups)}
          value={group}
          onChange={setGroup}
        />
        <Button
          look="primary"
          isDisabled={group === null}
          isPending={move.isPending}
          onPress={() => move.mutate({ specimens, change }, { onSuccess: at.onDone })}
        >
          Move
        </Button>
        <ConfirmDelete
          label="Delete"
          name={`the ${words} chosen`}
          title={`Delete ${words}?`}
          lost={<p>They and every analysis of them will be lost. This cannot be undone.</p>}
          onDelete={() => remove.mutateAsync(specimens).then(at.onDone)}
        />
        <Button look="quiet" onPress={at.onDone}>
          Choose none
        </Button>
      </div>
      <ErrorNotice error={move.error} title="Not moved" />
    </section>
  );
}
