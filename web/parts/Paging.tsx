import { Button } from './Button.tsx';
import { count } from './numbers.ts';

/** Where in a long list the reader is, and the way on. */
export function Paging(at: {
  readonly total: number;
  readonly offset: number;
  readonly limit: number;
  readonly noun: string;
  readonly onOffset: (offset: number) => void;
}) {
  const last = Math.min(at.offset + at.limit, at.total);
  const shown = at.total > at.limit ? `${at.offset + 1}–${last} of ` : '';
  return (
    <div className="paging">
      <span className="faint small" role="status">
        {shown}
        {count(at.total, at.noun)}
      </span>
      {at.total > at.limit && (
        <span className="row">
          <Button isDisabled={at.offset === 0} onPress={() => at.onOffset(Math.max(0, at.offset - at.limit))}>
            Earlier
          </Button>
          <Button isDisabled={last >= at.total} onPress={() => at.onOffset(at.offset + at.limit)}>
            Later
          </Button>
        </span>
      )}
    </div>
  );
}
