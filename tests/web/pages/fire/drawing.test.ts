import { describe, expect, it } from 'vitest';
import { BLANK, boxed, cornered, type Drawing, keyed } from '../../../../web/pages/fire/pictures/drawing.ts';

const press = (drawing: Drawing, ...keys: string[]) =>
  keys.reduce((now, key) => {
    const shiftKey = key.startsWith('Shift+');
    const next = keyed(now, { key: key.replace('Shift+', ''), shiftKey });
    if (next === null) throw new Error(`${key} does nothing here`);
    return next;
  }, drawing);
const triangle = press(BLANK, 'Enter', 'Shift+ArrowRight', 'Enter', 'Shift+ArrowDown', 'Enter');

describe('an outline drawn by keys', () => {
  it('takes a corner at the crosshair, a hundredth or, with Shift, a twentieth of the picture a step', () => {
    expect(press(BLANK, 'ArrowLeft', 'ArrowUp', 'Enter').corners).toEqual([[0.49, 0.49]]);
    expect(triangle.corners).toEqual([
      [0.5, 0.5],
      [0.55, 0.5],
      [0.55, 0.55],
    ]);
    expect(triangle.said).toBe('Corner 3 at 55 % from the left, 55 % from the top');
  });
  it('closes twice on one place, and on the first corner', () => {
    expect(press(triangle, 'Enter')).toMatchObject({ closed: true, corners: { length: 3 } });
    const back = press(triangle, 'Shift+ArrowLeft', 'Shift+ArrowUp', 'Enter');
    expect(back).toMatchObject({ closed: true, said: 'Outline closed, 3 corners' });
  });
  it('stays inside the picture', () => {
    const far = press(BLANK, ...Array.from({ length: 30 }, () => 'Shift+ArrowRight'));
    expect(far.at).toEqual([1, 0.5]);
  });
  it('takes a corner back, is dropped whole, and is left only when empty', () => {
    expect(press(triangle, 'Backspace')).toMatchObject({ corners: { length: 2 }, said: '2 corners left' });
    expect(press(BLANK, 'Backspace').said).toBe('No corner to take back');
    const empty = press(triangle, 'Escape');
    expect(empty).toMatchObject({ corners: [], said: 'Outline dropped' });
    expect(keyed(empty, { key: 'Escape', shiftKey: false })).toBeNull();
    expect(keyed(empty, { key: 'x', shiftKey: false })).toBeNull();
  });
  it('does not close with two corners on one place', () => {
    expect(press(BLANK, 'Enter', 'Enter')).toMatchObject({ closed: false, corners: { length: 1 } });
  });
});

describe('an outline drawn by pointer', () => {
  it('is a rectangle where dragged', () => {
    expect(boxed(BLANK, [0.1, 0.1], [0.4, 0.3])).toMatchObject({
      closed: true,
      corners: [
        [0.1, 0.1],
        [0.4, 0.1],
        [0.4, 0.3],
        [0.1, 0.3],
      ],
    });
  });
  it('stays open, saying why, where its sides cross', () => {
    const corners = [
      [0.1, 0.1],
      [0.9, 0.9],
      [0.9, 0.1],
      [0.1, 0.9],
    ] as const;
    const bow = corners.reduce<Drawing>((now, corner) => cornered(now, corner), BLANK);
    const tried = cornered(bow, [0.1, 0.105]);
    expect(tried).toMatchObject({ closed: false, corners: { length: 4 } });
    expect(tried.said).toContain('sides that do not cross');
  });
});
