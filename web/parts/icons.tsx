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

export function HalfDisc() {
  return (
    <svg viewBox="0 0 24 24" aria-hidden="true">
      <circle cx="12" cy="12" r="8" fill="none" stroke="currentColor" strokeWidth="2" />
      <path d="M12 4a8 8 0 0 1 0 16z" fill="currentColor" />
    </svg>
  );
}

export function Mark() {
  return (
    <svg viewBox="0 0 32 32" aria-hidden="true">
      <path d="M3 9C10 4.5 21 4.5 29 8.5L25.5 21 18 19.5 13.5 28 7 22.5z" stroke="none" />
      <path
        d="M5 12.7C11.5 8.7 20.5 8.7 27.7 12.3M6 16.6C12 12.9 19.5 12.9 26.5 16.2"
        strokeWidth="1.7"
        fill="none"
      />
    </svg>
  );
}
