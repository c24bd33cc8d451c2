import type { ClientResponse } from 'hono/client';
import { hc } from 'hono/client';
import type { AppType } from '../api/app.ts';
import { refusalFrom } from './problem.ts';

/** Every route of the service, typed from the service itself. */
export const api = hc<AppType>(location.origin).api;

type Success<Answer> =
  Answer extends ClientResponse<infer Data, infer Status, string>
    ? Status extends 200 | 201 | 202 | 204
      ? Data
      : never
    : never;

/** What a call brought; an error answer becomes a `Refusal` in the service's own words. */
export async function answer<Answer extends ClientResponse<unknown, number, string>>(
  asked: Promise<Answer>,
): Promise<Success<Answer>> {
  const got = await asked;
  if (!got.ok) throw await refusalFrom(got);
  if (got.status === 204) return undefined as Success<Answer>;
  return (await got.json()) as Success<Answer>;
}
