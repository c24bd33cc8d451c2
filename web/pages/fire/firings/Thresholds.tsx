import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { useThresholds } from '../../../queries/firing-logs.ts';
import { MOST, thresholdsIn } from './thresholds-typed.ts';

/** Temperatures whose time above is wanted; they may change at any time, also once a log is read. */
export function Thresholds({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const save = useThresholds(study, firing.id);
  const kept = firing.thresholds.join(', ');
  const [text, setText] = useState(kept);
  const read = thresholdsIn(text);
  const put = () => read && save.mutate(read, { onSuccess: () => setText(read.join(', ')) });
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
    >
      <div className="row base">
        <Field
          label="Temperatures to stay above (°C)"
          hint="Up to 12, with commas between"
          value={text}
          onChange={setText}
          wrong={read === null ? `Figures from −50 to 1800 °C are needed, at most ${MOST}.` : null}
        />
        <Button
          type="submit"
          isPending={save.isPending}
          isDisabled={read === null || read.join(', ') === kept}
        >
          Count these
        </Button>
      </div>
      <ErrorNotice error={save.error} />
    </form>
  );
}
