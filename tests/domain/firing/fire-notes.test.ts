import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airNow, litAt, openStage } from '../../../api/domain/firing/fire-marks.ts';
import type { FireLog, FireNote } from '../../../api/domain/firing/fire-note-types.ts';
import { noteFire } from '../../../api/domain/firing/fire-notes.ts';
import { changeStages } from '../../../api/domain/firing/hand-stages.ts';
import type { AirStage } from '../../../api/domain/firing/types.ts';

const EMPTY: FireLog = { stages: [], readings: [], marks: [] };
const START = Date.parse('2026-03-01T10:00:00Z');
const clock = (minutes: number) => new Date(START + 60_000 * minutes).toISOString();
const at = (id: string, minutes: number, noted = minutes) => ({
  id,
  at: clock(minutes),
  noted: clock(noted),
});
const reading = {
  kind: 'thermocouple' as const,
  celsius: 640,
  resolution: 1,
  sensor: { kind: 'unknown' as const },
};
const lit = (id: string, minutes: number, noted = minutes): FireNote => ({
  ...at(id, minutes, noted),
  kind: 'lit',
});
const read = (id: string, minutes: number): FireNote => ({
  ...at(id, minutes),
  kind: 'reading',
  where: '',
  reading,
});
const air = (id: string, minutes: number, what: AirStage['air']): FireNote => ({
  ...at(id, minutes),
  ...{ kind: 'air', air: what },
});
const out = (id: string, minutes: number): FireNote => ({ ...at(id, minutes), kind: 'out' });
const written = (notes: readonly FireNote[], log = EMPTY) => notes.reduce(noteFire, log);
const seen = ({ stages, readings, marks }: FireLog) => ({
  open: openStage({ stages, readings, marks }),
  stages,
  readings: readings.map((one) => `${one.at} ${one.clock}`).sort(),
  lit: litAt(marks),
  air: airNow(marks),
});

const minutes = (what: AirStage['air'], from: number, to: number): AirStage => ({
  ...{ air: what, from: 60 * from, to: 60 * to, note: null },
});
const inWords = ({ stages }: FireLog) => stages.map((one) => `${one.air} ${one.from / 60} ${one.to / 60}`);

const anyNote = fc.oneof(
  fc.nat(300).map((m) => (id: string) => read(id, m)),
  fc.tuple(fc.nat(300), fc.constantFrom('oxidising' as const, 'reducing' as const, 'smothered' as const)).map(
    ([m, what]) =>
      (id: string) =>
        air(id, m, what),
  ),
  fc.tuple(fc.nat(60), fc.nat(300)).map(
    ([m, noted]) =>
      (id: string) =>
        lit(id, m, noted),
  ),
  fc.nat(300).map((m) => (id: string) => out(id, m)),
);

describe('notes from the fire', () => {
  it('come to the same record in whatever order two phones send them, and however often', () => {
    fc.assert(
      fc.property(
        fc.array(anyNote, { maxLength: 14 }).chain((made) => {
          const notes = made.map((make, i) => make(`n${String(i).padStart(2, '0')}`));
          return fc.tuple(
            fc.constant(notes),
            fc.shuffledSubarray([...notes, ...notes], { minLength: 2 * notes.length }),
          );
        }),
        ([notes, shuffled]) => {
          const first = lit('first', 0, -1);
          const here = written([first, ...notes]);
          const there = written([first, ...shuffled]);
          expect(seen(there)).toEqual(seen(here));
          expect(there.marks).toHaveLength(notes.length + 1);
        },
      ),
    );
  });

  it('reckon minutes since lighting, before and after it is noted, and again when it is put right', () => {
    const before = written([read('r', 30)]);
    expect(before.readings[0]).toMatchObject({ at: null, clock: clock(30) });
    const known = written([lit('l', 0)], before);
    expect(known.readings[0]?.at).toBe(1800);
    const right = written([lit('l2', -10, 40)], known);
    expect(right.readings[0]?.at).toBe(2400);
    const older = written([lit('l3', 20, 10)], right);
    expect(older.readings[0]?.at).toBe(2400);
  });

  it('end a stage of air where the next begins, and count the same air again as one', () => {
    const log = written([
      lit('l', 0),
      air('a', 5, 'reducing'),
      air('b', 20, 'reducing'),
      air('c', 50, 'oxidising'),
    ]);
    expect(log.stages).toEqual([{ air: 'reducing', from: 300, to: 3000, note: null }]);
    expect(airNow(log.marks)).toEqual({ air: 'oxidising', since: clock(50) });
    const over = written([out('o', 90)], log);
    expect(over.stages[1]).toEqual({ air: 'oxidising', from: 3000, to: 5400, note: null });
    expect(airNow(over.marks)).toBeNull();
  });

  it('leave what was written by hand as it was', () => {
    const byHand: FireLog = {
      ...EMPTY,
      stages: [{ air: 'neutral', from: 0, to: 1200, note: 'written' }],
      readings: [{ id: 'written', at: 77, clock: clock(10), where: '', reading }],
    };
    const log = written([lit('l', 0), air('a', 10, 'reducing'), out('o', 60), lit('l2', 5, 61)], byHand);
    expect(log.stages).toContainEqual(byHand.stages[0]);
    expect(log.readings[0]?.at).toBe(77);
  });
});

describe('a stage taken out by hand', () => {
  const log = written([lit('l', 0), air('a', 5, 'reducing'), air('b', 50, 'oxidising'), out('o', 90)]);
  const without = changeStages(log, log.stages.slice(1));

  it('stays out, whatever is noted after, and the others move with the time of lighting', () => {
    const later = written(
      [read('r', 95), lit('l2', -10, 100), air('c', 120, 'smothered'), out('p', 130)],
      without,
    );
    expect(later.stages.map((one) => `${one.air} ${one.from / 60} ${one.to / 60}`)).toEqual([
      'oxidising 60 100',
      'smothered 130 140',
    ]);
  });

  it('stays out when a late phone says the same air earlier, which moves its beginning', () => {
    const earlier = noteFire(without, air('z', 3, 'reducing'));
    expect(inWords(earlier)).toEqual(['oxidising 50 90']);
  });

  it('stays out where it was written over by hand first, and that is taken out as well', () => {
    const over = changeStages(log, [minutes('reducing', 5, 40), ...log.stages.slice(1)]);
    expect(inWords(noteFire(over, read('r', 95)))).toEqual(['reducing 5 40', 'oxidising 50 90']);
    expect(inWords(changeStages(over, log.stages.slice(1)))).toEqual(['oxidising 50 90']);
  });

  it('stands again once it is written in by hand, and also when the taps come to the same minutes', () => {
    const again = changeStages(without, [minutes('reducing', 5, 30), ...without.stages]);
    const tapped = written([air('n', 30, 'neutral'), read('r', 95)], again);
    expect(inWords(tapped)).toEqual(['reducing 5 30', 'neutral 30 50', 'oxidising 50 90']);
  });

  it('is not one that a stage written by hand hid until the time of lighting moved it clear', () => {
    const byHand = { ...EMPTY, stages: [{ air: 'neutral' as const, from: 0, to: 600, note: null }] };
    const hidden = written([lit('l', 0), air('a', 5, 'reducing'), out('o', 15)], byHand);
    expect(hidden.stages.map((one) => one.air)).toEqual(['neutral']);
    const clear = noteFire(hidden, lit('l2', -10, 20));
    expect(clear.stages.map((one) => one.air)).toEqual(['neutral', 'reducing']);
  });
});

describe('a tapped stage that one written by hand hid', () => {
  const before = changeStages(EMPTY, [minutes('oxidising', 30, 70)]);
  const hidden = written([lit('l', 0), air('a', 5, 'reducing'), out('o', 50)], before);

  it('comes back when the written one is shortened or taken out, whatever is noted after', () => {
    expect(inWords(hidden)).toEqual(['oxidising 30 70']);
    const shorter = changeStages(hidden, [minutes('oxidising', 50, 70)]);
    expect(inWords(shorter)).toEqual(['reducing 5 50', 'oxidising 50 70']);
    expect(inWords(noteFire(shorter, read('r', 75)))).toEqual(['reducing 5 50', 'oxidising 50 70']);
    const gone = changeStages(hidden, []);
    expect(inWords(noteFire(gone, read('r', 75)))).toEqual(['reducing 5 50']);
  });

  it('comes back for any notes, just as if nothing had been written', () => {
    const hand = fc.tuple(fc.nat(300), fc.integer({ min: 1, max: 300 }));
    fc.assert(
      fc.property(fc.array(anyNote, { maxLength: 14 }), hand, (made, [from, length]) => {
        const notes = [lit('first', 0, -1), ...made.map((make, i) => make(`n${i}`))];
        const one = { ...minutes('neutral', from, from + length), note: 'written' };
        const log = written(notes, changeStages(EMPTY, [one]));
        expect(log.stages).toContainEqual(one);
        const back = changeStages(
          log,
          log.stages.filter((each) => each.note === null),
        );
        expect(seen(back)).toEqual(seen(written(notes)));
      }),
    );
  });
});

describe('the last air without its end', () => {
  const open = (notes: readonly FireNote[], log = EMPTY) => openStage(written([lit('l', 0), ...notes], log));
  const smothered = air('s', 310, 'smothered');
  const byHand = (what: 'oxidising' | 'smothered', from: number, to: number): FireLog => ({
    ...EMPTY,
    stages: [{ air: what, from: 60 * from, to: 60 * to, note: null }],
  });

  it('is told by its beginning, in no stage, until its end is noted, whoever notes it', () => {
    const log = written([lit('l', 0), air('a', 5, 'reducing'), smothered]);
    expect(log.stages.map((one) => one.air)).toEqual(['reducing']);
    expect(openStage(log)).toEqual({ air: 'smothered', from: 18_600 });
    const ended = noteFire(log, { ...at('e', 540, 2000), kind: 'out' });
    expect(openStage(ended)).toBeNull();
    expect(ended.stages[1]).toMatchObject({ air: 'smothered', from: 18_600, to: 32_400 });
  });

  it('begins at another minute once the time of lighting is put right', () => {
    expect(open([smothered, lit('l2', 10, 400)])?.from).toBe(18_000);
  });

  it('is none where a stage written by hand tells of that time', () => {
    expect(open([smothered], byHand('oxidising', 300, 320))).toBeNull();
    expect(open([smothered], byHand('smothered', 311, 540))).toBeNull();
    expect(open([smothered], byHand('oxidising', 0, 310))?.from).toBe(18_600);
    expect(open([smothered], byHand('oxidising', 420, 480))?.from).toBe(18_600);
  });

  it('is none without a time of lighting, and before any air', () => {
    expect(openStage({ ...EMPTY, marks: written([lit('l', 0), smothered]).marks.slice(1) })).toBeNull();
    expect(open([])).toBeNull();
  });
});

describe('notes that cannot be of this fire', () => {
  it('are refused with the reason', () => {
    expect(() => noteFire(EMPTY, air('a', 0, 'reducing'))).toThrow(
      'a stage of air needs the time the fire was lit; it is not noted yet',
    );
    expect(() => written([lit('l', 0), read('r', 100_000)])).toThrow(/within 57 days of its lighting/);
  });

  it('before it was lit have no minute', () => {
    expect(written([lit('l', 10), read('r', 5)]).readings[0]?.at).toBeNull();
  });
});
