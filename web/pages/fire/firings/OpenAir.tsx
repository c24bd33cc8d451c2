import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { hoursMinutes, openInWords, stageInWords } from '../../../../api/domain/firing/stages.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { useNoteEnd } from '../../../queries/firing-logs.ts';

/** The last air tapped at the fire, where nobody noted its end: said, with a way to put the end. */
export function OpenAir({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const end = useNoteEnd(study, firing.id);
  const [typed, setTyped] = useState('');
  const { open, lit } = firing;
  if (!open || !lit) return null;
  const minute = readNumber(typed);
  const wrong = typed.trim() ? wrongEnd(minute, firing) : null;
  const put = () => {
    if (minute === null || wrong) return;
    end.mutate(new Date(Date.parse(lit) + 60_000 * minute).toISOString());
  };
  return (
    <Notice kind="caution" title={sentence(openInWords(open))}>
      <p>
        So it is in no stage yet. While the fire burns, tap the next air or “The fire is out” on the phone;
        afterwards, put the end here.
      </p>
      <form
        className="row base"
        aria-label="The end of the last air"
        onSubmit={(event) => {
          event.preventDefault();
          put();
        }}
      >
        <Field
          label="It ended, minutes since lighting"
          inputMode="numeric"
          value={typed}
          wrong={wrong}
          onChange={setTyped}
        />
        <Button type="submit" isPending={end.isPending} isDisabled={minute === null || wrong !== null}>
          Put the end
        </Button>
      </form>
      <ErrorNotice error={end.error} />
    </Notice>
  );
}

const sentence = (words: string) => `${words[0]!.toUpperCase()}${words.slice(1)}.`;
const MOST_MINUTES = 80_000;

/** What is wrong with an end, in plain words: a stage written by hand would hide one that runs into it. */
function wrongEnd(minute: number | null, { open, stages }: FiringRecord): string | null {
  const from = open?.from ?? 0;
  if (minute === null || minute > MOST_MINUTES || 60 * minute <= from)
    return `Minutes after ${Math.ceil(from / 60)} (${hoursMinutes(from)} h).`;
  const next = stages.find((one) => one.to > from && one.from < 60 * minute);
  return next ? `It may not run into ${stageInWords(next)}.` : null;
}
