import type { ShareComment } from '../../../api/contract/share.ts';
import '../placement/placement.css';
import { day } from '../placement/words.ts';

/** What visitors said, oldest first. */
export function Said({ said }: { readonly said: readonly ShareComment[] }) {
  if (said.length === 0) return <p className="faint">No comment yet.</p>;
  return (
    <ul className="plain-list">
      {said.map(({ id, name, text, createdAt }) => (
        <li key={id}>
          <strong>{name}</strong> <span className="faint small">{day(createdAt)}</span>
          <p className="lines">{text}</p>
        </li>
      ))}
    </ul>
  );
}
