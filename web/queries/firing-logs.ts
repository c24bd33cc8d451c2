import { keepPreviousData, useMutation, useQuery } from '@tanstack/react-query';
import type { FiringRecord, TakenReading } from '../../api/contract/firing.ts';
import type { LogChoicesAsked, LogPreview } from '../../api/contract/firing-log.ts';
import { answer, api } from '../client.ts';
import { refusalFrom } from '../problem.ts';
import { underStudy, useRefresh } from './studies.ts';

const { firings } = api.studies[':study'];
const oneFiring = firings[':firing'];
const { log } = oneFiring;

export function useFiring(study: string, firing: string) {
  return useQuery({
    queryKey: underStudy(study, 'firing', firing),
    queryFn: () => answer(oneFiring.$get({ param: { study, firing } })),
  });
}
export function useAddReading(study: string, firing: string) {
  return useMutation({
    mutationFn: (reading: TakenReading) =>
      answer(oneFiring.readings.$post({ param: { study, firing }, json: [reading] })),
    onSuccess: useRefresh(study),
  });
}
export function useTakeOffReading(study: string, firing: string) {
  return useMutation({
    mutationFn: (reading: string) =>
      answer(oneFiring.readings[':reading'].$delete({ param: { study, firing, reading } })),
    onSettled: useRefresh(study),
  });
}
/** Notes on the firing's sheet, as a phone does: that the last air ended at an instant. */
export function useNoteEnd(study: string, firing: string) {
  return useMutation({
    mutationFn: (at: string) => {
      const note = { id: crypto.randomUUID(), noted: new Date().toISOString(), at, kind: 'out' as const };
      return answer(oneFiring.sheet.notes.$post({ param: { study, firing }, json: [note] }));
    },
    onSuccess: useRefresh(study),
  });
}
export function useThresholds(study: string, firing: string) {
  return useMutation({
    mutationFn: (thresholds: number[]) =>
      answer(oneFiring.$patch({ param: { study, firing }, json: { thresholds } })),
    onSuccess: useRefresh(study),
  });
}

/** A log to be read, and what the reader settled about it. */
export interface LogToSend {
  readonly file: File;
  readonly choices: LogChoicesAsked;
  /** Seconds from lighting to the log's first reading. */
  readonly begins: number;
}

function addressOf(url: URL, { file, choices, begins }: LogToSend): URL {
  url.searchParams.set('name', file.name.slice(0, 255));
  url.searchParams.set('begins', String(begins));
  if (Object.keys(choices).length > 0) url.searchParams.set('choices', JSON.stringify(choices));
  return url;
}
const TEXT = { 'content-type': 'text/csv' };

/** How the service understands a log; asked again whenever the choices change. */
export function useLogPreview(study: string, firing: string, sent: LogToSend | null) {
  const key = sent && [sent.file.name, sent.file.size, sent.file.lastModified, sent.choices];
  return useQuery({
    queryKey: ['log preview', study, firing, key],
    queryFn: async (): Promise<LogPreview> => {
      const url = addressOf(log.preview.$url({ param: { study, firing }, query: {} }) as URL, sent!);
      const got = await fetch(url, { method: 'POST', body: sent!.file, headers: TEXT });
      if (!got.ok) throw await refusalFrom(got);
      return (await got.json()) as LogPreview;
    },
    placeholderData: keepPreviousData,
    enabled: sent !== null,
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
  });
}

interface Sending extends LogToSend {
  /** Told the share sent; the service reads as it arrives. */
  readonly onProgress: (share: number) => void;
}

export function useSendLog(study: string, firing: string) {
  return useMutation({
    mutationFn: (sending: Sending) => {
      const url = addressOf(log.$url({ param: { study, firing }, query: {} }) as URL, sending);
      return put(url, sending);
    },
    onSuccess: useRefresh(study),
  });
}

/** By XMLHttpRequest, since fetch tells nothing of how far it has sent. */
function put(url: URL, { file, onProgress }: Sending): Promise<FiringRecord> {
  return new Promise((resolve, reject) => {
    const asked = new XMLHttpRequest();
    asked.open('PUT', url);
    asked.setRequestHeader('content-type', TEXT['content-type']);
    asked.upload.onprogress = ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0);
    asked.onerror = () => reject(new TypeError('network'));
    asked.onload = () => {
      const { status, responseText } = asked;
      if (status === 200) resolve(JSON.parse(responseText) as FiringRecord);
      else refusalFrom({ status, text: async () => responseText }).then(reject, reject);
    };
    asked.send(file);
  });
}

export function useMoveLog(study: string, firing: string) {
  return useMutation({
    mutationFn: (begins: number) => answer(log.$patch({ param: { study, firing }, json: { begins } })),
    onSuccess: useRefresh(study),
  });
}
export function useTakeOffLog(study: string, firing: string) {
  return useMutation({
    mutationFn: () => answer(log.$delete({ param: { study, firing } })),
    onSuccess: useRefresh(study),
  });
}

export function useFiringComparison(study: string, ids: readonly string[]) {
  return useQuery({
    queryKey: underStudy(study, 'firing comparison', ids),
    queryFn: () => answer(firings.comparison.$post({ param: { study }, json: { firings: [...ids] } })),
    enabled: ids.length > 1,
    retry: false,
  });
}
