import { useState } from 'react';
import { Link } from 'wouter';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import type { ShareMade } from '../../../../api/contract/share.ts';
import { Button } from '../../../parts/Button.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { QrCode } from '../../../parts/QrCode.tsx';
import { Select } from '../../../parts/Select.tsx';
import { studyPath } from '../../../paths.ts';
import { useHealth } from '../../../queries/lookups.ts';
import { useMakeShare } from '../../../queries/shares.ts';

const DAY = 86_400_000;
const SPANS = [
  { id: '1', label: 'A day' },
  { id: '3', label: '3 days' },
  { id: '14', label: '14 days' },
] as const;
type Span = (typeof SPANS)[number]['id'];

/** The sheet on another phone: a link that opens this firing and nothing else, while it lasts. */
export function SheetLink({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const [span, setSpan] = useState<Span>('3');
  const health = useHealth();
  const make = useMakeShare(study);
  const open = () => {
    const expiresAt = new Date(Date.now() + Number(span) * DAY).toISOString();
    make.mutate({ kind: 'sheet', firing: firing.id, expiresAt });
  };
  return (
    <section className="stack" aria-labelledby="link">
      <h2 id="link">On a phone</h2>
      <p>
        A link opens the sheet of {firing.name} on a phone, without an account. Whoever holds it can read and
        fill in that sheet, and reaches nothing else of the study.
      </p>
      {health.data?.outside === null && <NoDoor />}
      {health.data && health.data.outside !== null && (
        <>
          <div className="row base">
            <Select label="Opens for" choices={SPANS} value={span} onChange={setSpan} />
            <Button look="primary" isPending={make.isPending} onPress={open}>
              Make a link
            </Button>
          </div>
          <ErrorNotice error={make.error} title="No link made" />
          {make.data && <Made made={make.data} study={study} />}
        </>
      )}
    </section>
  );
}

/** What to do where phones cannot reach the service. */
function NoDoor() {
  return (
    <Notice title="Phones cannot reach this service yet">
      <p>
        There are no accounts, so it answers this computer only. To let a phone in, put a reverse proxy or a
        tunnel with a certificate of its own on this computer and start Nearsherd with NEARSHERD_OUTSIDE and
        your own name; the README says how. By that name only shared pages and sheets like this one open.
      </p>
      <p>Until then, open the sheet on this computer, or print the paper one below.</p>
    </Notice>
  );
}

function Made({ made, study }: { readonly made: ShareMade; readonly study: string }) {
  const [copied, setCopied] = useState(false);
  const address = `${made.address}/sheet`;
  const copy = () => navigator.clipboard.writeText(address).then(() => setCopied(true));
  return (
    <Notice kind="done" title={`The sheet of ${made.name} is open`}>
      <p>
        Point the phone’s camera at the code, or copy the address now: it is not kept, so it cannot be shown
        again. Open it once where there is a network; after that it works without.
      </p>
      <QrCode text={address} label={`The address of the sheet of ${made.name}, as a code`} />
      <p className="sheet-address">{address}</p>
      <div className="row">
        <Button onPress={copy}>{copied ? 'Copied' : 'Copy the address'}</Button>
        <Link href={studyPath(study, '/share')}>Take a link back, under Share</Link>
      </div>
    </Notice>
  );
}
