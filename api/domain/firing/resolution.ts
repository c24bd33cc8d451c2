/** Steps of the last digit that instruments show, finest first. */
const STEPS = [0.01, 0.1, 0.5, 1] as const;
const SAME = 1e-6;

/** Finds the step of the last digit of readings as they come: the coarsest common step that all of them are on. */
export class ResolutionFinder {
  #coarsest: number = STEPS.length - 1;
  #seen = false;

  add(shown: number): void {
    this.#seen = true;
    while (this.#coarsest > 0 && !onGrid(shown, STEPS[this.#coarsest]!)) this.#coarsest--;
  }

  get step(): number {
    return this.#seen ? STEPS[this.#coarsest]! : 1;
  }
}

function onGrid(value: number, step: number): boolean {
  const steps = value / step;
  return Math.abs(steps - Math.round(steps)) <= SAME * Math.max(1, Math.abs(steps));
}
