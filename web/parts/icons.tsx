/** Small drawings that say nothing on their own: always hidden from screen readers. */
export function Caret() {
  return (
    <svg className="caret" viewBox="0 0 12 12" aria-hidden="true">
      <path d="m2 4 4 4 4-4" />
    </svg>
  );
}

export function Check() {
  return (
    <svg viewBox="0 0 24 24" aria-hidden="true">
      <path d="m5 12.5 4.5 4.5L19 7.5" />
    </svg>
  );
}

export function SortArrows() {
  return (
    <svg viewBox="0 0 10 14" aria-hidden="true">
      <path className="up" d="M1 6 5 1l4 5z" />
      <path className="down" d="m1 8 4 5 4-5z" />
    </svg>
  );
}

export function Mark() {
  return (
    <svg viewBox="0 0 32 32" aria-hidden="true">
      <path d="M4 9 17 3l11 7-3 13-9 6-11-7z" stroke="none" />
      <path d="m6.2 14.5 20.6-.8M5.6 18.6l20.3-.7" strokeWidth="1.8" fill="none" />
    </svg>
  );
}
