/**
 * A Vite plugin: builds the service worker of the sheet at the fire, with the list of built files that the sheet needs.
 * Workbox does the keeping; only the list is made here, since its own builder would bring 300 packages for it.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { build, type Plugin, type Rolldown } from 'vite';

const WORKER = 'web/offline/sheet-worker.ts';
const SHEET = '/pages/fire/sheet/PhoneSheet.tsx';
/** Files of web/public that every page names. */
const PUBLIC = ['appearance.js', 'mark.svg'];

interface KeptFile {
  readonly url: string;
  /** Digest of a file whose name does not change with it. */
  readonly revision: string | null;
}

export function sheetWorker(): Plugin {
  return {
    name: 'sheet-worker',
    apply: 'build',
    async writeBundle({ dir }, bundle) {
      const files = filesOf(bundle);
      await build({
        configFile: false,
        publicDir: false,
        logLevel: 'error',
        define: { SHEET_FILES: JSON.stringify(files), 'process.env.NODE_ENV': '"production"' },
        build: {
          outDir: dir!,
          emptyOutDir: false,
          target: 'es2022',
          lib: { entry: WORKER, formats: ['iife'], name: 'sheetWorker', fileName: () => 'sheet-worker.js' },
        },
      });
    },
  };
}

type Bundle = Rolldown.OutputBundle;
type Chunk = Rolldown.OutputChunk;

function filesOf(bundle: Bundle): KeptFile[] {
  const chunks = Object.values(bundle).filter((one): one is Chunk => one.type === 'chunk');
  const pages = Object.values(bundle).find((one) => one.fileName === 'index.html');
  const entry = chunks.find((one) => one.isEntry && one.facadeModuleId?.endsWith('/web/index.html'));
  const sheet = chunks.find((one) => one.facadeModuleId?.endsWith(SHEET));
  if (!pages || !entry || !sheet)
    throw new Error(
      `The sheet worker needs index.html, its entry and a chunk of ${SHEET}; one is not built.`,
    );
  const needed = [...new Set([entry, sheet].flatMap((one) => withImports(one, bundle)))];
  const styles = needed.flatMap((one) => [...(one.viteMetadata?.importedCss ?? [])]);
  const fonts = Object.keys(bundle).filter((name) => /\.(ttf|woff2)$/.test(name) && !/italic/i.test(name));
  const hashed = new Set([...needed.map((one) => one.fileName), ...styles, ...fonts]);
  return [
    { url: '/index.html', revision: digest((pages as Rolldown.OutputAsset).source) },
    ...PUBLIC.map((name) => ({
      url: `/${name}`,
      revision: digest(readFileSync(path.join('web/public', name))),
    })),
    ...[...hashed].sort().map((name) => ({ url: `/${name}`, revision: null })),
  ];
}

/** A chunk and all that it imports at once, however deep. */
function withImports(chunk: Chunk, bundle: Bundle, seen = new Set<string>()): Chunk[] {
  if (seen.has(chunk.fileName)) return [];
  seen.add(chunk.fileName);
  const imported = chunk.imports.map((name) => bundle[name]).filter((one) => one?.type === 'chunk');
  return [chunk, ...imported.flatMap((one) => withImports(one as Chunk, bundle, seen))];
}

const digest = (content: string | Uint8Array) =>
  createHash('sha256').update(content).digest('hex').slice(0, 16);
