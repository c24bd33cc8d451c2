/**
 * Runs every file of this folder that exports `bench(): Promise<void>`, one after the other, or those named:
 * npm run bench -- pca placement.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

const only = process.argv.slice(2);
const folder = import.meta.dirname;
const isBench = (file: string) =>
  /^export (async function|const) bench\b/m.test(readFileSync(path.join(folder, file), 'utf8'));
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.ts') && isBench(file))
  .map((file) => path.basename(file, '.ts'));

const unknown = only.filter((name) => !names.includes(name));
if (unknown.length > 0) throw new Error(`no benchmark ${unknown.join(', ')}; there are ${names.join(', ')}`);
for (const name of names.filter((n) => only.length === 0 || only.includes(n))) {
  const { bench } = (await import(path.join(folder, `${name}.ts`))) as { bench: () => Promise<void> };
  console.log(`\n${name}`);
  await bench();
}
