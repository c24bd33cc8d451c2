import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Sheet, SheetNote } from '../../../../api/contract/sheet.ts';
import { readingBounds } from '../../../../api/domain/firing/hand-reading.ts';
import { FIRST, readingBy } from '../../../../web/pages/fire/sheet/instrument.ts';
import {
  hasRecord,
  hidingStage,
  instantOf,
  minuteOf,
  withWaiting,
} from '../../../../web/pages/fire/sheet/overlay.ts';
import type { PhoneNote } from '../../../../web/pages/fire/sheet/store.ts';

const SHEET: Sheet = {
  firing: { id: 'f', name: 'F1', date: null, place: '', fuel: '' },
  ...{ lit: null, logged: false, air: null, stages: [], readings: [], arrived: [] },
  tiles: [
    {
      ...{ id: 't', label: 'T1', place: '', position: null, settings: {} },
      zones: [{ id: 'z', label: 'A1', coats: 1, micrometres: null, settings: {}, grade: 'matt' }],
    },
  ],
  answeredAt: '2026-03-01T10:00:00Z',
};
const at = '2026-03-01T10:05:00.000Z';
const kept = (note: object, over: Partial<PhoneNote> = {}): PhoneNote => ({
  ...{ id: 'n', sheet: 's', words: '', sentAt: null, refused: null },
  note: { id: 'n', noted: at, at, ...note } as SheetNote,
  ...over,
});

describe('the sheet with what waits on the phone', () => {
  it('shows lighting, air and gloss as they will be once the notes arrive', () => {
    expect(withWaiting(SHEET, [kept({ kind: 'lit' })]).lit).toBe(at);
    expect(withWaiting(SHEET, [kept({ kind: 'air', air: 'reducing' })]).air).toEqual({
      air: 'reducing',
      since: at,
    });
    const judged = kept({ kind: 'judgement', tile: 't', zone: 'z', grade: 'glossy' });
    expect(withWaiting(SHEET, [judged]).tiles[0]?.zones[0]?.grade).toBe('glossy');
  });

  it('leaves out what has arrived, which others may have changed since, and what was refused', () => {
    const judged = { kind: 'judgement', tile: 't', zone: 'z', grade: 'glossy' };
    expect(withWaiting({ ...SHEET, arrived: ['n'] }, [kept(judged)]).tiles).toEqual(SHEET.tiles);
    expect(withWaiting(SHEET, [kept(judged, { refused: 'no' })]).tiles).toEqual(SHEET.tiles);
  });
});

describe('what is written down already', () => {
  const stage = (from: number, to: number) => ({ air: 'oxidising' as const, from, to, note: null });
  const lit = '2026-03-01T10:00:00Z';
  const clock = (minute: number) => new Date(Date.parse(lit) + 60_000 * minute).toISOString();
  const seen = (stages: Sheet['stages']): Sheet => ({
    ...SHEET,
    lit,
    stages,
    air: { air: 'reducing', since: clock(30) },
  });

  it('is a log, a stage or a reading: then lighting it now is asked about', () => {
    expect(hasRecord(SHEET)).toBe(false);
    expect(hasRecord({ ...SHEET, logged: true })).toBe(true);
    expect(hasRecord({ ...SHEET, stages: [stage(0, 60)] })).toBe(true);
  });

  it('hides a tap that falls inside a stage written by hand, or runs into one', () => {
    expect(hidingStage(seen([stage(0, 3600)]), clock(31))).toMatchObject({ to: 3600 });
    expect(hidingStage(seen([stage(2400, 3600)]), clock(50))).toMatchObject({ from: 2400 });
    expect(hidingStage(seen([stage(2400, 3600)]), clock(35))).toBeNull();
    expect(hidingStage(seen([stage(0, 1800)]), clock(31))).toBeNull();
    expect(hidingStage({ ...seen([stage(0, 3600)]), air: null }, clock(31))).toBeNull();
  });

  it('is not judged by minutes that a waiting time of lighting will move', () => {
    const later = kept({ kind: 'lit', at: clock(20) });
    expect(hidingStage(withWaiting(seen([stage(600, 1800)]), [later]), clock(31))).toBeNull();
    expect(withWaiting({ ...SHEET, stages: [stage(0, 60)] }, [later]).stages).toHaveLength(1);
  });
});

describe('a time of day typed at the fire', () => {
  it('is the last such time, at most an hour ahead, to the minute', () => {
    const time = fc.tuple(fc.nat(23), fc.nat(59));
    const now = fc.date({ min: new Date('2026-01-01'), max: new Date('2026-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(time, now, ([hours, minutes], here) => {
        const typed = `${hours}:${String(minutes).padStart(2, '0')}`;
        const found = new Date(instantOf(typed, here)!);
        expect([found.getHours(), found.getMinutes()]).toEqual([hours, minutes]);
        const ahead = found.getTime() - here.getTime();
        expect(ahead).toBeLessThanOrEqual(3600_000);
        expect(ahead).toBeGreaterThan(-24 * 3600_000);
      }),
    );
  });

  it('that is none is none', () => {
    expect(['', '25:00', '10:60', 'ten'].map((text) => instantOf(text))).toEqual([null, null, null, null]);
  });

  it('is minute 0 for the first minute, and none before', () => {
    expect(minuteOf(at, '2026-03-01T10:05:59Z')).toBe(0);
    expect(minuteOf(at, '2026-03-01T10:04:59Z')).toBeNull();
    expect(minuteOf(null, at)).toBeNull();
  });
});

describe('what a reading follows from', () => {
  it('is the class of the thermocouple: IEC 60584-1, type K class 2, 0.0075 of the reading at 850 °C', () => {
    const { low, high } = readingBounds(readingBy({ ...FIRST, kind: 'K2' }, 850));
    expect(high - 850).toBeGreaterThanOrEqual(6.375);
    expect(850 - low).toBeLessThan(6.375 + 0.5 + 0.1);
  });

  it('is the infrared thermometer’s setting, wavelength and accuracy, with the surface’s bounds', () => {
    const reading = readingBy({ ...FIRST, kind: 'infrared' }, 737);
    expect(reading).toMatchObject({
      kind: 'infrared',
      set: 0.95,
      micrometres: 10,
      accuracy: { share: 0.02 },
    });
    const { low, value, high } = readingBounds(reading);
    expect(low).toBeLessThan(value);
    expect(value).toBeLessThan(high);
    expect(value).toBeGreaterThan(737);
  });
});
