import type { ReactNode } from 'react';
import { faultsOf, messageOf } from '../problem.ts';

export type NoticeKind = 'info' | 'done' | 'caution' | 'error';

/** Something the reader should know. Errors are read out at once, the rest when the reader gets there. */
export function Notice(at: {
  readonly kind?: NoticeKind;
  readonly title?: string;
  readonly children?: ReactNode;
}) {
  const kind = at.kind ?? 'info';
  return (
    <div
      className={`notice ${kind}`}
      role={kind === 'error' ? 'alert' : kind === 'done' ? 'status' : undefined}
    >
      {at.title && <strong>{at.title}</strong>}
      {at.children}
    </div>
  );
}

/** What went wrong, in plain words; nothing when `error` is null. */
export function ErrorNotice({ error, title }: { readonly error: unknown; readonly title?: string }) {
  if (error === null || error === undefined) return null;
  const faults = faultsOf(error);
  return (
    <Notice kind="error" {...(title ? { title } : {})}>
      <p>{messageOf(error)}</p>
      {faults.length > 0 && (
        <ul>
          {faults.map((fault) => (
            <li key={`${fault.at} ${fault.message}`}>
              {fault.at && <strong>{fault.at}: </strong>}
              {fault.message}
            </li>
          ))}
        </ul>
      )}
    </Notice>
  );
}

export function Tag(at: {
  readonly kind?: 'plain' | 'done' | 'caution' | 'error';
  readonly children: ReactNode;
}) {
  return <span className={`tag ${at.kind ?? 'plain'}`}>{at.children}</span>;
}
