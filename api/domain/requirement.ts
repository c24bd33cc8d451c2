/**
 * A requirement of the domain that the data does not meet. The message states the requirement, then what was
 * found: `clr needs positive parts; SnO2 is 0 in R-17`.
 */
export class RequirementError extends Error {
  override readonly name = 'RequirementError';
}
