import { afterAll, beforeAll } from 'vitest';
import { type Client, localClient } from './api-client.ts';
import { type TestDatabase, testDatabase } from './test-database.ts';

/** Gives a test file a service of its own on a database of its own. */
export function startApi(): { readonly api: Client; readonly database: TestDatabase } {
  const held: { api?: Client; database?: TestDatabase } = {};
  beforeAll(async () => {
    held.database = await testDatabase();
    held.api = localClient(held.database.db);
  });
  afterAll(() => held.database?.close());
  return {
    get api() {
      return held.api!;
    },
    get database() {
      return held.database!;
    },
  };
}
