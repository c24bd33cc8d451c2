import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { compressed } from './scripts/build/compressed.ts';
import { shareFile } from './scripts/build/share-file.ts';
import { sheetWorker } from './scripts/build/sheet-worker.ts';

export default defineConfig({
  root: 'web',
  plugins: [react(), sheetWorker(), shareFile(), compressed()],
  build: {
    ...{ outDir: '../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500 },
    // What is shared has a page of its own: a visitor loads nothing of the study's.
    rolldownOptions: { input: ['web/index.html', 'web/shared.html'] },
  },
  worker: { format: 'es' },
});
