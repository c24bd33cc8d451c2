import type { Readiness } from '../../../offline/register.ts';
import { Button } from '../../../parts/Button.tsx';
import { CsvDownload } from '../../../parts/CsvDownload.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { count } from '../../../parts/numbers.ts';
import { clockOf } from './overlay.ts';
import { isGone } from './send.ts';
import type { PhoneNote } from './store.ts';
import type { SheetState } from './useSheet.ts';

const KEPT: Readonly<Record<Readiness, string>> = {
  ready: 'This sheet opens without a network now: you may close it, and walk out of reach.',
  'not here':
    'This browser cannot keep the sheet: leave it open while you are out of reach. Notes stay on the phone.',
  failed: 'The sheet could not be kept: leave it open while you are out of reach. Notes stay on the phone.',
};

/** What waits and what was sent, and whether the phone is ready to leave the network. */
export function SendState(at: {
  readonly notes: readonly PhoneNote[];
  readonly state: SheetState;
  readonly kept: Readiness | null;
  readonly onSend: () => void;
  readonly onDrop: (id: string) => void;
}) {
  const waiting = at.notes.filter((one) => one.sentAt === null && one.refused === null);
  const sent = at.notes.filter((one) => one.sentAt !== null);
  const refused = at.notes.filter((one) => one.refused !== null);
  return (
    <>
      <div className={`sending ${waiting.length > 0 ? 'waits' : 'sent'}`}>
        <p role="status">
          <strong>
            {waiting.length > 0 ? `${count(waiting.length, 'note')} waiting on this phone` : words(sent)}
          </strong>
          {at.state.heardAt && !at.state.live && (
            <span>No answer from the service; shown as it was at {clockOf(at.state.heardAt)}.</span>
          )}
        </p>
        {waiting.length > 0 && <Button onPress={at.onSend}>Send now</Button>}
      </div>
      {isGone(at.state.error) && waiting.length + refused.length > 0 && (
        <Notice kind="caution" title="This sheet is closed">
          <p>What waits can no longer be sent here. Save it, and hand it on as a file.</p>
          <SaveNotes notes={[...waiting, ...refused]} />
        </Notice>
      )}
      {refused.map((one) => (
        <Notice key={one.id} kind="error" title={`Not taken: ${one.words}`}>
          <p>{one.refused}</p>
          <Button onPress={() => at.onDrop(one.id)}>Throw that note away</Button>
        </Notice>
      ))}
      <ClockCaution state={at.state} />
      {at.kept && <p className="faint">{KEPT[at.kept]}</p>}
    </>
  );
}

function words(sent: readonly PhoneNote[]): string {
  const last = sent.at(-1)?.sentAt;
  if (!last) return 'Nothing waits on this phone';
  return `${sent.length === 1 ? 'The note has' : `All ${sent.length} notes have`} been sent, the last at ${clockOf(last)}`;
}

function SaveNotes({ notes }: { readonly notes: readonly PhoneNote[] }) {
  const rows = () => notes.map(({ note, words: said, refused }) => [note.noted, note.at, said, refused]);
  return (
    <CsvDownload
      name="notes-from-the-fire"
      header={['noted', 'of the time', 'what', 'why not taken']}
      rows={rows}
      label="Save what waits as CSV"
    />
  );
}

/** Beyond this two clocks put a reading in the wrong minute. */
const APART = 90_000;

function ClockCaution({ state: { sheet, live, heardAt } }: { readonly state: SheetState }) {
  if (!sheet || !live || !heardAt) return null;
  const apart = Date.parse(heardAt) - Date.parse(sheet.answeredAt);
  if (Math.abs(apart) < APART) return null;
  const minutes = Math.round(Math.abs(apart) / 60_000);
  return (
    <Notice kind="caution" title="This phone’s clock is off">
      <p>
        It is {count(minutes, 'minute')} {apart > 0 ? 'ahead of' : 'behind'} the service’s. Set it right, or
        note everything of this fire on one phone: minutes are reckoned by the phone’s own clock.
      </p>
    </Notice>
  );
}
