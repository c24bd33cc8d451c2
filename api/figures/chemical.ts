const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';

/** A formula with its counts set low, in Unicode subscripts that any font file of the figure carries: `Fe₂O₃`. */
export function chemical(formula: string): string {
  return formula.replace(/(?<=[A-Za-z)\]])\d+(?:\.\d+)?/g, (count) =>
    count.replace(/\d/g, (digit) => SUBSCRIPTS[Number(digit)]!),
  );
}
