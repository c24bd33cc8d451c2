import type { Sheet, SheetNote, SheetPicture } from '../contract/sheet.ts';
import { openShareOf, type Visitor } from './share-open.ts';
import { readSheet, type SheetPlace } from './sheet.ts';
import { addNotes, addPicture } from './sheet-notes.ts';

/** The firing that a link opens; whoever holds it may read and fill in its sheet, and reaches nothing else. */
async function placeOf(visitor: Visitor): Promise<SheetPlace> {
  const { studyId, payload } = await openShareOf(visitor, 'sheet');
  return { studyId, firingId: payload.firing };
}

export async function readSharedSheet(visitor: Visitor): Promise<Sheet> {
  return readSheet(visitor.db, await placeOf(visitor));
}

export async function noteOnSharedSheet(visitor: Visitor, notes: readonly SheetNote[]): Promise<Sheet> {
  return addNotes(visitor.db, await placeOf(visitor), notes);
}

export async function pictureOnSharedSheet(visitor: Visitor, sent: SheetPicture): Promise<Sheet> {
  return addPicture(visitor.db, await placeOf(visitor), sent);
}
