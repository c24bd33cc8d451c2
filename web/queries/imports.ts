import { keepPreviousData, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { DataImport } from '../../api/contract/import.ts';
import { answer, api } from '../client.ts';
import type { AskedChoices } from './asked-choices.ts';
import { underStudy, useRefresh } from './studies.ts';

const imports = api.studies[':study'].imports;
const oneImport = imports[':import'];

/** What is to be read, and what the reader settled about it; the service works out the rest. */
export interface Upload {
  readonly file: File | null;
  readonly text: string | null;
  readonly sheet: string | null;
  readonly encoding: string | null;
  readonly asked: AskedChoices;
}

function formOf({ file, text, sheet, encoding, asked }: Upload) {
  return {
    ...(file ? { file } : {}),
    ...(text !== null ? { text } : {}),
    ...(sheet !== null ? { sheet } : {}),
    ...(encoding !== null ? { encoding } : {}),
    ...(Object.keys(asked).length > 0 ? { choices: JSON.stringify(asked) } : {}),
  };
}

/** How the service understands an upload; asked again whenever the choices change. */
export function usePreview(study: string, upload: Upload) {
  const { file, text, sheet, encoding, asked } = upload;
  const source = file ? [file.name, file.size, file.lastModified] : text;
  return useQuery({
    queryKey: ['preview', study, source, sheet, encoding, asked],
    queryFn: () => answer(imports.preview.$post({ param: { study }, form: formOf(upload) })),
    placeholderData: keepPreviousData,
    enabled: file !== null || text !== null,
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
  });
}

export function useStartImport(study: string) {
  return useMutation({
    mutationFn: (upload: Upload) => answer(imports.$post({ param: { study }, form: formOf(upload) })),
  });
}

/** An import under way, asked for until it ends; the study is read again when it does. */
export function useImport(study: string, id: string) {
  const refresh = useRefresh(study);
  const query = useQuery({
    queryKey: ['import', study, id],
    queryFn: () => answer(oneImport.$get({ param: { study, import: id } })),
    refetchInterval: ({ state }) =>
      state.error || (state.data && state.data.status !== 'running') ? false : 400,
  });
  const status = query.data?.status;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only the end of the import matters
  useEffect(() => {
    if (status && status !== 'running') refresh();
  }, [status]);
  return query;
}

export function useImports(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'imports'),
    queryFn: (): Promise<DataImport[]> => answer(imports.$get({ param: { study } })),
  });
}

/** Stops an import under way, or takes back what a finished one brought. */
export function useEndImport(study: string) {
  const refresh = useRefresh(study);
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (id: string) => answer(oneImport.$delete({ param: { study, import: id } })),
    onSuccess: (_, id) =>
      Promise.all([refresh(), queries.invalidateQueries({ queryKey: ['import', study, id] })]),
  });
}
