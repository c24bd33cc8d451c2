import { createHash } from 'node:crypto';
import type { ShareFile } from '../contract/shared.ts';

/** The built page: one script that asks for nothing, one style sheet with its fonts in it. */
export interface BuiltPage {
  readonly script: string;
  readonly style: string;
}

/**
 * One HTML file that opens from a disk without a network. What is shared stands in it as data; only the page's own
 * script, known by its digest, may run, so nothing in a name can.
 */
export function writeShareFile(content: ShareFile, { script, style }: BuiltPage): string {
  const code = inScript(script);
  const policy = [
    ...["default-src 'none'", `script-src 'sha256-${digest(code)}'`, "style-src 'unsafe-inline'"],
    ...['img-src data: blob:', 'font-src data:', "base-uri 'none'", "form-action 'none'"],
  ].join('; ');
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<meta name="referrer" content="no-referrer">',
    `<title>${asText(nameOf(content.shared))} – Nearsherd</title>`,
    `<style>${style.replaceAll('</', '<\\/')}</style>`,
    '</head>',
    '<body>',
    '<div id="page"></div>',
    '<noscript>This page needs JavaScript; it asks nothing of any network.</noscript>',
    `<script type="application/json" id="frozen">${inData(content)}</script>`,
    `<script>${code}</script>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

const nameOf = (shared: ShareFile['shared']) =>
  shared.kind === 'placement' ? shared.placement.name : shared.name;
const digest = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
/** Within a script no end of it, and no beginning of a comment that would hide one; the same strings. */
const inScript = (code: string) => code.replace(/<(?=\/script|!--)/gi, '\\x3c');
const inData = (value: unknown) => JSON.stringify(value).replaceAll('<', '\\u003c');
const ENTITIES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const asText = (text: string) => text.replace(/[&<>"]/g, (char) => ENTITIES[char]!);
