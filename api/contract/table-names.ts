/** Apart from the schemas: a page that shows these names need not carry what checks them. */
export const COMPARISON_TABLES = [
  'placements',
  'contributions',
  'scores',
  'loadings',
  'members',
  'excluded',
] as const;

/** Tables of what is shared, by its kind. */
export const SHARED_TABLES = {
  placement: COMPARISON_TABLES,
  outcome: ['zones', 'effects'],
  bench: ['recipe', 'oxides'],
} as const;
