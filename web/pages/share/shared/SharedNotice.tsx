import { Notice } from '../../../parts/Notice.tsx';
import { day } from '../../placement/words.ts';

/** What a visitor should know of whatever is shared. */
export function SharedNotice(at: {
  readonly createdAt: string;
  readonly version: string;
  readonly expiresAt: string | null;
}) {
  return (
    <Notice>
      <p>
        Shared with you to read. Computed on {day(at.createdAt)} by version {at.version} and frozen since.
        {at.expiresAt && ` It can be opened until ${day(at.expiresAt)}.`}
      </p>
    </Notice>
  );
}
