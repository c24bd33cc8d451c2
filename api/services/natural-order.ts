const WIDTH = 12;

/**
 * Spells a label so that plain code-point order is the order a reader expects: `T2` before `T10`, case and accents
 * folded. Kept beside the label, because no collation does this on both databases.
 */
export function naturalOrder(label: string): string {
  return label
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\d+/g, (digits) => digits.replace(/^0+(?=\d)/, '').padStart(WIDTH, '0'));
}
