/**
 * Puts the k-th smallest number (from 0) in its sorted place, nothing smaller after it and nothing larger before it:
 * Hoare's selection (1961, doi 10.1145/366622.366647), pivot the middle of three. Works in place on from … to.
 * Several are had by asking in rising order, each from the place of the one before.
 * @example
 * numbers = Float64Array.of(5, 1, 4, 2, 3)
 * selectPlace(numbers, 2) // 3
 * numbers[2] // 3
 */
export function selectPlace(numbers: Float64Array, k: number, from = 0): number {
  let [low, high] = [from, numbers.length - 1];
  while (low < high) {
    const pivot = middleOf(numbers[low]!, numbers[(low + high) >> 1]!, numbers[high]!);
    let i = low;
    let j = high;
    while (i <= j) {
      while (numbers[i]! < pivot) i++;
      while (numbers[j]! > pivot) j--;
      if (i > j) break;
      const held = numbers[i]!;
      numbers[i++] = numbers[j]!;
      numbers[j--] = held;
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return numbers[k]!;
}

function middleOf(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
