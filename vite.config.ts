import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { shareFile } from './scripts/build/share-file.ts';
import { sheetWorker } from './scripts/build/sheet-worker.ts';

export default defineConfig({
  root: 'web',
  plugins: [react(), sheetWorker(), shareFile()],
  build: { outDir: '../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500 },
  worker: { format: 'es' },
});
