import type { Sheet, SheetNote } from '../../../../api/contract/sheet.ts';
import type { PhoneNote, PictureNote } from './store.ts';

/** The sheet as it will be once this phone's notes have arrived. */
export function withWaiting(sheet: Sheet, notes: readonly PhoneNote[]): Sheet {
  const there = new Set(sheet.arrived);
  const waiting = notes.filter((one) => one.refused === null && !there.has(one.id)).map((one) => one.note);
  return waiting.reduce(withNote, sheet);
}

function withNote(sheet: Sheet, note: SheetNote | PictureNote): Sheet {
  // Where a time of lighting moves, the service moves the stages that were tapped: until it has, their minutes are off.
  if (note.kind === 'lit') return { ...sheet, lit: note.at, stages: sheet.lit === null ? sheet.stages : [] };
  if (note.kind === 'out') return { ...sheet, air: null };
  if (note.kind === 'air')
    return sheet.air?.air === note.air ? sheet : { ...sheet, air: { air: note.air, since: note.at } };
  if (note.kind === 'reading' || note.kind === 'picture') return sheet;
  const tiles = sheet.tiles.map((tile) => ({
    ...tile,
    zones: tile.zones.map((zone) => (zone.id === note.zone ? { ...zone, grade: note.grade } : zone)),
  }));
  return { ...sheet, tiles };
}

/** Whole minutes since the fire was lit, at an instant; null before. */
export function minuteOf(lit: string | null, at: string): number | null {
  if (lit === null) return null;
  const minutes = Math.floor((Date.parse(at) - Date.parse(lit)) / 60_000);
  return minutes >= 0 ? minutes : null;
}

/** Whether anything of this fire is written down already: lighting it now is then likely a slip. */
export const hasRecord = ({ stages, readings, logged }: Sheet): boolean =>
  logged || stages.length + readings.length > 0;

/**
 * The stage written by hand that lies where the air now was tapped, and so hides it; null where none does. A stage that
 * was tapped has ended before the air now began, so one that reaches beyond was written.
 */
export function hidingStage({ lit, air, stages }: Sheet, now: string): Sheet['stages'][number] | null {
  if (lit === null || air === null) return null;
  const [from, until] = [air.since, now].map((at) => (Date.parse(at) - Date.parse(lit)) / 1000) as [
    number,
    number,
  ];
  return stages.find((one) => one.to > from + 1 && one.from <= until) ?? null;
}

/** `14:03`, by this phone's clock. */
export const clockOf = (instant: string): string =>
  new Date(instant).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/** An instant from a time of day typed on the phone: the last one that is past, give or take an hour. */
export function instantOf(time: string, now = new Date()): string | null {
  const parts = /^(\d{1,2}):(\d{2})$/.exec(time);
  if (!parts || Number(parts[1]) > 23 || Number(parts[2]) > 59) return null;
  const at = new Date(now);
  at.setHours(Number(parts[1]), Number(parts[2]), 0, 0);
  if (at.getTime() - now.getTime() > 3600_000) at.setDate(at.getDate() - 1);
  return at.toISOString();
}
