import { useCallback, useState } from 'react';
import { Link } from 'wouter';
import { ENTRY_KINDS, type Entry, type EntryKind } from '../../../../api/contract/notebook.ts';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Tag } from '../../../parts/Notice.tsx';
import { count } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { SearchBox } from '../../../parts/SearchBox.tsx';
import { Select } from '../../../parts/Select.tsx';
import { type PageProps, studyPath } from '../../../paths.ts';
import { useNotebook } from '../../../queries/fire.ts';
import { pictureUrl } from '../../../queries/pictures.ts';
import { asQuery } from '../../../queries/specimens.ts';
import { firePath, planPath, tilePath } from '../paths.ts';
import '../pictures/pictures.css';

const ALL = 'all';
const KINDS = [
  { id: ALL, label: 'Everything' },
  ...ENTRY_KINDS.map((id) => ({ id, label: `${id[0]!.toUpperCase()}${id.slice(1)}` })),
] as const;
/** As many as a reader scrolls through; a search finds the rest. */
const SHOWN = 200;

/** Everything of the study on one line of time. */
export function NotebookPage({ study }: PageProps) {
  const [search, setSearch] = useState('');
  const [kind, setKind] = useState<EntryKind | typeof ALL>(ALL);
  const wishes = { ...(search ? { search } : {}), ...(kind === ALL ? {} : { kind }) };
  const notebook = useNotebook(study, { ...wishes, fold: 'analyses' });
  const onSearch = useCallback((words: string) => setSearch(words), []);
  const query = new URLSearchParams(asQuery(wishes)).toString();
  return (
    <>
      <PageHead
        title="Notebook"
        lead="Batches, roasts, firings, tiles, plans, analyses and placements, newest first. Many analyses of one file or one day stand as one entry; a download lists each."
        actions={
          <>
            <Download study={study} file="notebook.zip" query={query}>
              Download with pictures
            </Download>
            <Download study={study} file="notebook.csv" query={query}>
              Download as CSV
            </Download>
          </>
        }
      />
      <div className="row base">
        <SearchBox label="Search the notebook" value={search} onSearch={onSearch} />
        <Select
          label="Show"
          choices={KINDS as readonly { id: EntryKind | typeof ALL; label: string }[]}
          value={kind}
          onChange={setKind}
        />
      </div>
      <Loaded query={notebook} what="the notebook">
        {(entries) => <Entries study={study} entries={entries} />}
      </Loaded>
    </>
  );
}

function Download(at: {
  readonly study: string;
  readonly file: string;
  readonly query: string;
  readonly children: string;
}) {
  const href = `/api/studies/${at.study}/${at.file}${at.query && `?${at.query}`}`;
  return (
    <a className="button plain" href={href} download>
      {at.children}
    </a>
  );
}

function Entries({ study, entries }: { readonly study: string; readonly entries: readonly Entry[] }) {
  if (entries.length === 0) return <p>Nothing is written down that fits.</p>;
  return (
    <>
      <p className="faint" role="status">
        {count(entries.length, 'entry', 'entries')}
        {entries.length > SHOWN && `, the newest ${SHOWN} shown; search for the rest or download them all`}
      </p>
      <ol className="line">
        {entries.slice(0, SHOWN).map((entry) => (
          <li key={`${entry.kind} ${entry.id}`}>
            <span>
              {entry.date}
              {!entry.dated && <span className="hint small"> written down</span>}
            </span>
            <div className="stack tight">
              <span>
                <Tag>{entry.kind}</Tag> <Link href={whereIs(study, entry)}>{entry.title}</Link>
              </span>
              {entry.text && <span className="faint">{entry.text}</span>}
              {entry.pictures.length > 0 && (
                <ul className="thumbs" aria-label={`Pictures of ${entry.title}`}>
                  {entry.pictures.map(({ id, alt }) => (
                    <li key={id} className="thumb">
                      <img src={pictureUrl(study, id)} alt={alt} loading="lazy" />
                    </li>
                  ))}
                </ul>
              )}
            </div>
          </li>
        ))}
      </ol>
    </>
  );
}

function whereIs(study: string, { kind, id, specimen, count: folded }: Entry): string {
  if (folded > 1) return studyPath(study, '/sherds');
  const places: Readonly<Record<EntryKind, string>> = {
    batch: studyPath(study, `/bench/batches/${id}`),
    roast: studyPath(study, `/bench/roasts/${id}`),
    firing: firePath(study, '/firings'),
    tile: tilePath(study, id),
    plan: planPath(study, id),
    analysis: studyPath(study, `/sherds/${specimen}/analyses/${id}`),
    placement: studyPath(study, `/placement/kept/${id}`),
  };
  return places[kind];
}
