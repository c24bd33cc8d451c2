/**
 * A Vite plugin: builds the page of a share as one script and one style sheet with the fonts in it, which the service
 * puts into one file together with what is shared (`api/export/share-file.ts`).
 */
import { createRequire } from 'node:module';
import path from 'node:path';
import react from '@vitejs/plugin-react';
import { build, type Plugin } from 'vite';

const ENTRY = 'web/standalone/standalone.tsx';
/** Its build for pages carries what Node would lend it; its package does not name that build. */
const PDFKIT = path.join(
  path.dirname(createRequire(import.meta.url).resolve('pdfkit')),
  'pdfkit.standalone.js',
);

export function shareFile(): Plugin {
  return {
    name: 'share-file',
    apply: 'build',
    async writeBundle({ dir }) {
      await build({
        configFile: false,
        publicDir: false,
        logLevel: 'error',
        plugins: [react()],
        resolve: { alias: { pdfkit: PDFKIT } },
        define: { 'process.env.NODE_ENV': '"production"' },
        build: {
          outDir: path.join(dir!, '../share-file'),
          emptyOutDir: true,
          target: 'es2022',
          cssCodeSplit: false,
          assetsInlineLimit: Number.POSITIVE_INFINITY,
          chunkSizeWarningLimit: 3_000,
          lib: {
            ...{ entry: ENTRY, formats: ['iife'], name: 'nearsherdShare' },
            ...{ fileName: () => 'page.js', cssFileName: 'page' },
          },
        },
      });
    },
  };
}
