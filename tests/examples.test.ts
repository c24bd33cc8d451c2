import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * Runs every `@example` in the domain. One statement a line; a line `expression // value` asserts
 * (numbers to 1e-4 relative), `expression // throws words` asserts an error whose message holds the words.
 */
const root = path.resolve(import.meta.dirname, '../api/domain');
const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));

const documented = /(\/\*\*(?:(?!\*\/)[\s\S])*\*\/)?\s*^export (?:async )?function\*? (\w+)/gm;

function exampleOf(comment: string): string[] {
  const text = comment.replace(/^\s*\/\*\*|\*\/$/g, '').replace(/^\s*\* ?/gm, '');
  const body = text.split('@example')[1]?.split(/^@\w/m)[0];
  return (body ?? '')
    .split('\n')
    .map((l) => l.trim())
    .filter(Boolean);
}

const functions = files.flatMap((file) =>
  [...readFileSync(path.join(root, file), 'utf8').matchAll(documented)].map((m) => ({
    file,
    name: m[2] as string,
    example: exampleOf(m[1] ?? ''),
  })),
);

const modules = await Promise.all(files.map((f) => import(path.join(root, f)) as Promise<object>));
const scope: Record<string, unknown> = Object.assign({}, ...modules);
const names = Object.keys(scope);

function close(found: unknown, wanted: unknown): boolean {
  if (typeof wanted === 'number' && typeof found === 'number')
    return Object.is(found, wanted) || Math.abs(found - wanted) <= 1e-4 * Math.max(Math.abs(wanted), 1e-9);
  if (Array.isArray(wanted) || ArrayBuffer.isView(found))
    return (
      (Array.isArray(found) || ArrayBuffer.isView(found)) &&
      JSON.stringify(Array.from(found as ArrayLike<unknown>).length) ===
        JSON.stringify((wanted as unknown[]).length) &&
      (wanted as unknown[]).every((w, i) => close((found as ArrayLike<unknown>)[i], w))
    );
  if (wanted && typeof wanted === 'object' && found && typeof found === 'object')
    return Object.entries(wanted).every(([k, w]) => close((found as Record<string, unknown>)[k], w));
  return Object.is(found, wanted);
}

function run(lines: string[]): number {
  const checks: { found: unknown; wanted: unknown; line: string }[] = [];
  const body = lines.map((line) => {
    const at = line.lastIndexOf(' // ');
    if (at < 0) return line;
    const [expression, wanted] = [line.slice(0, at).replace(/;$/, ''), line.slice(at + 4)];
    const found = wanted.startsWith('throws ')
      ? `(() => { try { ${expression}; return 'nothing thrown'; } catch (e) { return e.message.includes(${JSON.stringify(wanted.slice(7))}) || e.message; } })()`
      : `(${expression})`;
    const value = wanted.startsWith('throws ') ? 'true' : `(${wanted})`;
    return `__check(${found}, ${value}, ${JSON.stringify(line)});`;
  });
  const check = (found: unknown, wanted: unknown, line: string) => checks.push({ found, wanted, line });
  new Function(...names, '__check', body.join('\n'))(...names.map((n) => scope[n]), check);
  for (const c of checks)
    expect(close(c.found, c.wanted), `${c.line}\n found ${JSON.stringify(c.found)}`).toBe(true);
  return checks.length;
}

describe('every public function of the domain shows an example that holds', () => {
  it.each(functions)('$file $name', ({ example }) => {
    expect(run(example)).toBeGreaterThan(0);
  });
});
