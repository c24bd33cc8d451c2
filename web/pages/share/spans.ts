const DAY = 86_400_000;
export const SPANS = [
  { id: '7', label: 'A week' },
  { id: '30', label: '30 days' },
  { id: '365', label: 'A year' },
  { id: 'ever', label: 'Until you take it back' },
] as const;
export type Span = (typeof SPANS)[number]['id'];

/** When a share ends that opens for so long from now; null for never. */
export const endOf = (span: Span): string | null =>
  span === 'ever' ? null : new Date(Date.now() + Number(span) * DAY).toISOString();
