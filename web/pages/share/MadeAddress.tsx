import { useState } from 'react';
import type { ShareMade } from '../../../api/contract/share.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import './share.css';

/** The address of a share, told once. */
export function MadeAddress({ made }: { readonly made: ShareMade }) {
  const [copied, setCopied] = useState(false);
  const address = made.address ?? `${location.origin}${made.path}`;
  const copy = () => navigator.clipboard.writeText(address).then(() => setCopied(true));
  return (
    <Notice kind="done" title={`“${made.name}” is shared`}>
      <p>
        Copy its address now: it is not kept, so it cannot be shown again.{' '}
        <a className="share-address" href={made.path} target="_blank" rel="noreferrer">
          {address}
        </a>
      </p>
      <div>
        <Button onPress={copy}>{copied ? 'Copied' : 'Copy the address'}</Button>
      </div>
    </Notice>
  );
}
