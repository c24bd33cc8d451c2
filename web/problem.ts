import type { Fault, Problem } from '../api/contract/problem.ts';

/** An answer the service refused, with its reasons as it gave them (RFC 9457). */
export class Refusal extends Error {
  readonly status: number;
  readonly faults: readonly Fault[];
  constructor(problem: Pick<Problem, 'title' | 'detail' | 'status' | 'faults'>) {
    super(problem.detail || problem.title);
    this.name = 'Refusal';
    this.status = problem.status;
    this.faults = problem.faults ?? [];
  }
}

const UNREACHABLE = 'The service does not answer. Check that it is still running, then try again.';

/** Any error as one sentence for a reader who never sees a status code. */
export function messageOf(error: unknown): string {
  if (error instanceof Refusal) return error.message;
  if (error instanceof TypeError && /fetch|network|load failed/i.test(error.message)) return UNREACHABLE;
  return error instanceof Error ? error.message : String(error);
}

export function faultsOf(error: unknown): readonly Fault[] {
  if (!(error instanceof Refusal)) return [];
  return error.faults.filter((fault) => fault.message !== error.message);
}

/** Reads a refused answer; one that is no problem document still says what happened. */
export async function refusalFrom(answer: { status: number; text(): Promise<string> }): Promise<Refusal> {
  const text = await answer.text().catch(() => '');
  try {
    const body = JSON.parse(text) as Partial<Problem>;
    if (typeof body.title === 'string' || typeof body.detail === 'string')
      return new Refusal({
        title: body.title ?? '',
        detail: body.detail ?? '',
        status: answer.status,
        ...(body.faults ? { faults: body.faults } : {}),
      });
  } catch {
    // Not JSON: a proxy's page, say.
  }
  const detail =
    answer.status === 413
      ? 'The file is larger than the service takes.'
      : `The service answered with an error (${answer.status}).`;
  return new Refusal({ title: 'Refused', detail, status: answer.status });
}
