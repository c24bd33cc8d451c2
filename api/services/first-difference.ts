/** Where two JSON values first differ, as a path such as `model.mean.3`; null where they do not. */
export function firstDifference(one: unknown, other: unknown, path = ''): string | null {
  if (Object.is(one, other)) return null;
  if (!isHolder(one) || !isHolder(other) || Array.isArray(one) !== Array.isArray(other))
    return path || 'all of it';
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  for (const key of keys) {
    const found = firstDifference(one[key], other[key], path === '' ? key : `${path}.${key}`);
    if (found !== null) return found;
  }
  return null;
}

const isHolder = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;
