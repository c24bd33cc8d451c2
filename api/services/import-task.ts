import type {
  Choices,
  DraftAnalysis,
  Part,
  Preview,
  Problem,
  ReadOptions,
  RememberedChoices,
} from '../intake/types.ts';

/** What the worker is given: a file or pasted text, and what is known of files with the same headers. */
export interface ReadTask {
  readonly what: 'preview' | 'import';
  readonly source: { readonly bytes: Uint8Array } | { readonly text: string };
  readonly options: ReadOptions;
  /** Settled by hand; null takes the file as it is understood. */
  readonly choices: Partial<Choices> | null;
  readonly remembered: Readonly<Record<string, RememberedChoices>>;
}

/** An analysis on its way to the database: its figures are JSON text, made where it disturbs nobody. */
export type StagedDraft = Omit<DraftAnalysis, 'values'> & { readonly reported: string };
export type StagedPart = Omit<Part, 'analyses'> & { readonly analyses: readonly StagedDraft[] };

/** What the worker says, one message at a time; it goes on when it is told to. */
export type ReadMessage =
  | { readonly is: 'preview'; readonly preview: Preview }
  | {
      readonly is: 'opened';
      readonly fingerprint: string;
      readonly toRemember: RememberedChoices;
      readonly problems: readonly Problem[];
    }
  | { readonly is: 'part'; readonly part: StagedPart }
  | { readonly is: 'refused'; readonly message: string }
  | { readonly is: 'end' };
