import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { TakenReading } from '../../../../api/contract/firing.ts';
import type { ZoneChange } from '../../../../api/contract/tile.ts';

/** What was noted at the fire and has not reached the service yet. */
export type Note = { readonly study: string; readonly words: string } & (
  | { readonly kind: 'zone'; readonly tile: string; readonly zone: string; readonly change: ZoneChange }
  | { readonly kind: 'reading'; readonly firing: string; readonly reading: TakenReading }
);
export type Waiting = Note & { readonly id: number };

interface Kept extends DBSchema {
  waiting: { key: number; value: Note & { id?: number }; indexes: { study: string } };
}

let opened: Promise<IDBPDatabase<Kept>> | null = null;
const store = () => {
  opened ??= openDB<Kept>('nearsherd-fire', 1, {
    upgrade: (db) => {
      db.createObjectStore('waiting', { keyPath: 'id', autoIncrement: true }).createIndex('study', 'study');
    },
  });
  return opened;
};

export async function keepNote(note: Note): Promise<void> {
  await (await store()).add('waiting', note);
}

/** In the order they were noted. */
export async function notesOf(study: string): Promise<Waiting[]> {
  return (await (await store()).getAllFromIndex('waiting', 'study', study)) as Waiting[];
}

export async function forgetNote(id: number): Promise<void> {
  await (await store()).delete('waiting', id);
}
