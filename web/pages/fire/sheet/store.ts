import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Sheet, SheetNote } from '../../../../api/contract/sheet.ts';

/** A picture taken at the fire, of a tile or of the fire itself. */
export interface PictureNote extends Pick<SheetNote, 'id' | 'noted' | 'at'> {
  readonly kind: 'picture';
  readonly tile: string | null;
  readonly file: File;
}

/** A note on this phone: waiting, sent, or refused by the service with its reason. */
export interface PhoneNote {
  readonly id: string;
  /** The sheet it belongs to, by its address. */
  readonly sheet: string;
  readonly note: SheetNote | PictureNote;
  readonly words: string;
  readonly sentAt: string | null;
  readonly refused: string | null;
}
/** What the service last answered, kept for when it does not. */
export interface KeptSheet {
  readonly address: string;
  readonly sheet: Sheet;
  readonly keptAt: string;
}

interface Phone extends DBSchema {
  notes: { key: string; value: PhoneNote; indexes: { sheet: string } };
  sheets: { key: string; value: KeptSheet };
}

let opened: Promise<IDBPDatabase<Phone>> | null = null;
const phone = () => {
  opened ??= openDB<Phone>('nearsherd-fire', 2, {
    upgrade: (db) => {
      for (const name of [...db.objectStoreNames]) db.deleteObjectStore(name);
      db.createObjectStore('notes', { keyPath: 'id' }).createIndex('sheet', 'sheet');
      db.createObjectStore('sheets', { keyPath: 'address' });
    },
  });
  return opened;
};

export const keepNote = async (note: PhoneNote) => void (await (await phone()).put('notes', note));
export const dropNote = async (id: string) => (await phone()).delete('notes', id);

/** In the order they were noted. */
export async function notesOf(sheet: string): Promise<PhoneNote[]> {
  const all = await (await phone()).getAllFromIndex('notes', 'sheet', sheet);
  return all.sort((a, b) => (a.note.noted < b.note.noted ? -1 : 1));
}

export const keepSheet = async (kept: KeptSheet) => void (await (await phone()).put('sheets', kept));
export const keptSheet = async (address: string) => (await phone()).get('sheets', address);
export const forgetSheet = async (address: string) => (await phone()).delete('sheets', address);
