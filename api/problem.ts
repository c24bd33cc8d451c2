import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { ZodError } from 'zod';
import type { Fault, Problem } from './contract/problem.ts';
import { RequirementError } from './domain/requirement.ts';
import { Failure, type FailureKind } from './services/failure.ts';

/** A request that does not fit its schema. */
export class InvalidRequest extends Error {
  override readonly name = 'InvalidRequest';
  readonly faults: readonly Fault[];
  constructor(where: string, error: ZodError) {
    super(`the request's ${where} must fit what this address takes.`);
    this.faults = error.issues.map((issue) => ({ at: issue.path.join('.'), message: issue.message }));
  }
}

const STATUS: Record<FailureKind, ContentfulStatusCode> = {
  'not found': 404,
  conflict: 409,
  invalid: 422,
  'too large': 413,
  refused: 403,
  gone: 410,
  'too many': 429,
};
const TITLES: Record<number, string> = {
  400: 'The request cannot be read',
  403: 'Not allowed',
  404: 'Not found',
  405: 'Not possible here',
  409: 'In the way of something else',
  410: 'No longer here',
  413: 'Too large',
  415: 'Wrong kind of content',
  422: 'A requirement is not met',
  429: 'Too often',
  500: 'The service failed',
};

/** Answers with a problem document (RFC 9457). */
export function answerProblem(
  c: Context,
  status: ContentfulStatusCode,
  about: Pick<Problem, 'detail' | 'faults'>,
) {
  const body: Problem = { type: 'about:blank', title: TITLES[status] ?? 'Error', status, ...about };
  return c.body(JSON.stringify(body), status, { 'content-type': 'application/problem+json; charset=utf-8' });
}

/** Turns whatever was thrown into a problem; what nobody foresaw is logged here and told to nobody. */
export function problemOf(error: unknown, c: Context): Response {
  if (error instanceof Failure)
    return answerProblem(c, STATUS[error.kind], { detail: error.message, ...faultsOf(error) });
  if (error instanceof RequirementError) return answerProblem(c, 422, { detail: error.message });
  if (error instanceof InvalidRequest)
    return answerProblem(c, 422, { detail: detailOf(error), ...faultsOf(error) });
  if (error instanceof HTTPException) return answerProblem(c, thrownStatus(error), { detail: error.message });
  console.error(error);
  return answerProblem(c, 500, { detail: 'The service failed while answering; its log says where.' });
}

const faultsOf = ({ faults }: { faults: readonly Fault[] }) =>
  faults.length > 0 ? { faults: [...faults] } : {};

function detailOf(error: InvalidRequest): string {
  const [first] = error.faults;
  return first ? `${first.at === '' ? '' : `${first.at}: `}${first.message}` : error.message;
}

function thrownStatus(error: HTTPException): ContentfulStatusCode {
  return error.status in TITLES ? (error.status as ContentfulStatusCode) : 400;
}
