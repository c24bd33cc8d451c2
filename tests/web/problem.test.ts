import { expect, test } from 'vitest';
import { faultsOf, messageOf, Refusal, refusalFrom } from '../../web/problem.ts';

const answered = (status: number, body: string) => ({ status, text: async () => body });

test('a refused answer is told in the service’s own words, with every fault', async () => {
  const faults = [{ at: 'body.name', message: 'needs at least one character' }];
  const body = JSON.stringify({ title: 'Not valid', detail: 'the body has 1 fault.', faults });
  const refusal = await refusalFrom(answered(422, body));
  expect(messageOf(refusal)).toBe('the body has 1 fault.');
  expect(refusal.status).toBe(422);
  expect(faultsOf(refusal)).toEqual(faults);
});

test('a fault that only repeats the message is not shown twice', () => {
  const detail = 'a label must be unique.';
  const refusal = new Refusal({ title: '', detail, status: 409, faults: [{ at: 'label', message: detail }] });
  expect(faultsOf(refusal)).toEqual([]);
});

test('an answer that is no problem document still says what happened', async () => {
  expect(messageOf(await refusalFrom(answered(502, '<html>Bad gateway</html>')))).toMatch(/error \(502\)/);
  expect(messageOf(await refusalFrom(answered(413, '')))).toMatch(/larger than the service takes/);
  expect(messageOf(await refusalFrom(answered(500, 'null')))).toMatch(/error \(500\)/);
});

test('a service that does not answer is named as such', () => {
  expect(messageOf(new TypeError('Failed to fetch'))).toMatch(/does not answer/);
});

test('any other error is shown as it is', () => {
  expect(messageOf(new Error('clr needs positive parts'))).toBe('clr needs positive parts');
});
