import { useCallback, useEffect, useState } from 'react';
import type { Upload } from '../../queries/imports.ts';
import { keep, readKept } from './kept-upload.ts';

export const NO_UPLOAD: Upload = { file: null, text: null, sheet: null, encoding: null, asked: {} };

/** What is being brought in, kept over a reload until it is in or given up. */
export function useUpload(study: string) {
  const [upload, setUpload] = useState<Upload | null>(null);
  useEffect(() => {
    readKept(study).then((kept) => setUpload((now) => now ?? kept ?? NO_UPLOAD));
  }, [study]);
  const set = useCallback(
    (next: Upload) => {
      setUpload(next);
      keep(study, next.file || next.text !== null ? next : null);
    },
    [study],
  );
  const clear = useCallback(() => set(NO_UPLOAD), [set]);
  return { upload, set, clear };
}
