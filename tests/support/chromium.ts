import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    chromiumPath: string;
  }
}

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
const USUAL_PATHS = [
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ...[process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA].flatMap((root) =>
    root
      ? [
          join(root, 'Google/Chrome/Application/chrome.exe'),
          join(root, 'Microsoft/Edge/Application/msedge.exe'),
        ]
      : [],
  ),
];

/** The browser the tests drive: the one named, one on the PATH, one where such are kept, or playwright's own. */
export function findChromium(): string | null {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH must name a file; ${named} is none.`);
  }
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .filter(Boolean)
    .flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return (
    [...onPath, ...USUAL_PATHS, chromium.executablePath()].find((path) => path && existsSync(path)) ?? null
  );
}

const isDebianRoot = () => existsSync('/etc/debian_version') && process.getuid?.() === 0;

function installOnDebian() {
  console.log('No Chromium found; installing Debian’s with apt-get …');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const run = (...words: string[]) =>
    execFileSync('apt-get', words, { env, stdio: ['ignore', 'ignore', 'inherit'] });
  run('update', '-qq');
  run('install', '-y', '-qq', '--no-install-recommends', 'chromium');
}

const HOW_TO_GET_IT =
  'Browser tests need Chromium or Chrome: install either, run `npx playwright-core install chromium`, or set CHROMIUM_PATH.';

export default function setup(project: TestProject) {
  if (findChromium() === null && isDebianRoot()) installOnDebian();
  const path = findChromium();
  if (path === null) throw new Error(HOW_TO_GET_IT);
  project.provide('chromiumPath', path);
}
