import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import { expect, test } from 'vitest';

const { forbidden } = createRequire(import.meta.url)('../.dependency-cruiser.cjs');

/** Names of the rules that files break, each given with its text. */
async function broken(files: Readonly<Record<string, string>>): Promise<string[]> {
  const baseDir = await mkdtemp(path.join(tmpdir(), 'nearsherd-rules-'));
  try {
    await mkdir(path.join(baseDir, 'api/export'), { recursive: true });
    for (const [name, text] of Object.entries(files)) await writeFile(path.join(baseDir, name), text);
    const ruleSet = { forbidden };
    const { output } = await cruise(['api'], { baseDir, ruleSet, validate: true });
    return (output as ICruiseResult).summary.violations.map(({ rule }) => rule.name);
  } finally {
    await rm(baseDir, { recursive: true, force: true });
  }
}

const RULE = 'what-is-drawn-anywhere-uses-no-node';
const figures = { 'api/export/share-figures.ts': "import './trial-figures.ts';\n" };
const trial = (text: string) => ({ ...figures, 'api/export/trial-figures.ts': text });

test.each(['node:fs', 'fs/promises'])(
  'what a saved page draws by reaches no %s, however far off',
  async (core) => {
    expect(await broken(trial(`import '${core}';\n`))).toContain(RULE);
    expect(await broken({ 'api/export/share-figures.ts': `import '${core}';\n` })).toContain(RULE);
  },
);

test('what a saved page draws by may take what is pure', async () => {
  expect(await broken(trial('export const pure = 1;\n'))).not.toContain(RULE);
});
