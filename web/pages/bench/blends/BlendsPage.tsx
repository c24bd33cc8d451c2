import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { Batch } from '../../../../api/contract/batch.ts';
import { linesOfEntries } from '../../../../api/domain/batch/bench-shelf.ts';
import { type BlendPoint, blendSeries } from '../../../../api/domain/batch/blend.ts';
import { RequirementError } from '../../../../api/domain/requirement.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Field } from '../../../parts/Field.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { count, readNumber, showAnalyte } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import type { PageProps } from '../../../paths.ts';
import { useBatches, useSaveBlend } from '../../../queries/bench.ts';
import { type Fired, fireHere } from '../fired/compute.ts';
import { attempt, type Outcome } from '../parts/attempt.ts';
import { SaveTable } from '../parts/SaveTable.tsx';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { batchPath, benchPath } from '../paths.ts';
import { blendTable } from '../tables.ts';

/** Series between two, three or four batches, ready for tiles. */
export function BlendsPage({ study }: PageProps) {
  const batches = useBatches(study);
  return (
    <>
      <PageHead
        title="Blends"
        lead="Two batches make a line, three a triangle, four a square: each place of it is a batch for one tile."
      />
      <WithShelf study={study}>
        {(bench) => (
          <Loaded query={batches} what="the batches">
            {(rows) =>
              rows.length < 2 ? (
                <EmptyState
                  title="A blend needs two batches"
                  actions={<LinkButton to={benchPath(study, '/batches/new')}>New batch</LinkButton>}
                >
                  <p>Weigh two or more batches first; this page mixes them.</p>
                </EmptyState>
              ) : (
                <Blends study={study} bench={bench} batches={rows} />
              )
            }
          </Loaded>
        )}
      </WithShelf>
    </>
  );
}

interface BlendForm {
  readonly name: string;
  /** Batch ids; null for an end not used. */
  readonly ends: readonly (string | null)[];
  readonly steps: string;
  readonly grams: string;
}

const END_NAMES = ['First batch', 'Second batch', 'Third batch', 'Fourth batch'] as const;
const NONE = 'none';

interface BlendsProps {
  readonly study: string;
  readonly bench: Bench;
  readonly batches: readonly Batch[];
}

function Blends({ study, bench, batches }: BlendsProps) {
  const own = batches.filter((batch) => batch.series === '');
  const start: BlendForm = {
    ...{ name: '', ends: [own[0]?.id ?? null, own[1]?.id ?? null, null, null], steps: '4', grams: '20' },
  };
  const draft = useDraft(`blend.${study}`, start);
  const form = draft.value;
  const set = (part: Partial<BlendForm>) => draft.set({ ...form, ...part });
  const save = useSaveBlend(study);
  const [tried, setTried] = useState<string | null>(null);
  const ends = form.ends.flatMap((id) => batches.find((batch) => batch.id === id) ?? []);
  const plan = () => ({
    steps: typed('Steps from end to end', form.steps),
    grams: typed('Dry batch for each place', form.grams),
  });
  const points = attempt(() =>
    blendSeries(
      ends.map((end) => linesOfEntries(end.lines, bench.shelf)),
      plan(),
    ),
  );
  const keep = () => {
    const fault = form.name.trim() ? points.reason : 'A blend needs a name: its batches are called after it.';
    setTried(fault);
    if (fault) return;
    const json = { name: form.name.trim(), batches: ends.map((end) => end.id), ...plan() };
    save.mutate(json, { onSuccess: () => draft.clear() });
  };
  const hazards =
    points.value?.flatMap((point) => point.lines.flatMap((line) => line.material.hazards)) ?? [];
  return (
    <div className="stack wide-gap">
      <div className="fields">
        {END_NAMES.map((label, i) => (
          <Select
            key={label}
            label={label}
            choices={[
              ...(i > 1 ? [{ id: NONE, label: 'None' }] : []),
              ...batches.map(({ id, name }) => ({ id, label: name })),
            ]}
            value={form.ends[i] ?? (i > 1 ? NONE : null)}
            onChange={(id) =>
              set({ ends: form.ends.map((end, j) => (j === i ? (id === NONE ? null : id) : end)) })
            }
          />
        ))}
        <Field
          label="Steps from end to end"
          inputMode="numeric"
          value={form.steps}
          onChange={(steps) => set({ steps })}
        />
        <Field
          label="Dry batch for each place (g)"
          inputMode="decimal"
          value={form.grams}
          onChange={(grams) => set({ grams })}
        />
        <Field label="Name of the series" value={form.name} onChange={(name) => set({ name })} />
      </div>
      {points.reason && <Notice kind="error">{points.reason}</Notice>}
      {tried && tried !== points.reason && <Notice kind="error">{tried}</Notice>}
      <ErrorNotice error={save.error} title="Not saved" />
      {save.data && (
        <Notice kind="done">
          {count(save.data.length, 'batch', 'batches')} kept:{' '}
          <Link href={benchPath(study)}>see the batches</Link>.
        </Notice>
      )}
      {points.value && (
        <>
          <div className="row">
            <Button look="primary" isPending={save.isPending} onPress={keep}>
              Keep all {points.value.length} as batches
            </Button>
          </div>
          <PointsTable points={points.value} ends={ends} bench={bench} />
        </>
      )}
      <KeptSeries study={study} batches={batches} />
      <Cautions hazards={hazards} />
    </div>
  );
}

function PointsTable(at: {
  readonly points: readonly BlendPoint[];
  readonly ends: readonly Batch[];
  readonly bench: Bench;
}) {
  const { points, ends, bench } = at;
  const fired = useMemo(
    () => new Map(points.map((point) => [point.label, firedOf(point, ends, bench)])),
    [points, ends, bench],
  );
  const places = points.map((point) => ({ ...point, fired: percentOf(fired.get(point.label)!) }));
  const columns: Column<BlendPoint>[] = [
    { id: 'place', label: 'Place', header: true, cell: (row) => row.label },
    ...ends.map(
      (end, i): Column<BlendPoint> => ({
        ...{ id: `share-${i}`, label: `${end.name}, %`, numeric: true },
        cell: (row) => (100 * (row.shares[i] ?? 0)).toFixed(1),
      }),
    ),
    {
      id: 'weigh',
      label: 'Weigh, g',
      prose: true,
      cell: (row) => row.lines.map((line) => `${line.material.name} ${line.amount.toFixed(2)}`).join(', '),
    },
    { id: 'fired', label: 'Fires to, wt%', prose: true, cell: (row) => mainOxides(fired.get(row.label)!) },
  ];
  return (
    <>
      <DataTable label="Places of the blend" columns={columns} rows={points} rowKey={(row) => row.label} />
      <SaveTable
        name="blend"
        table={blendTable(
          places,
          ends.map((end) => end.name),
        )}
      />
    </>
  );
}

function firedOf({ lines }: BlendPoint, ends: readonly Batch[], { shelf }: Bench): Outcome<Fired> {
  const entries = lines.map(({ material, amount, water = 0 }) => ({ material: material.id, amount, water }));
  return attempt(() => fireHere(entries, ends[0]!.fire, shelf));
}

const percentOf = (made: Outcome<Fired>): Record<string, number> =>
  Object.fromEntries((made.value?.fired.oxides ?? []).map((one) => [one.oxide, one.percent]));

function mainOxides(made: Outcome<Fired>): string {
  if (!made.value) return made.reason;
  return [...made.value.fired.oxides]
    .sort((a, b) => b.percent - a.percent)
    .slice(0, 4)
    .map((one) => `${showAnalyte(one.oxide)} ${one.percent.toFixed(1)}`)
    .join(', ');
}

function KeptSeries({ study, batches }: { readonly study: string; readonly batches: readonly Batch[] }) {
  const series = new Map<string, Batch[]>();
  for (const batch of batches)
    if (batch.series) series.set(batch.series, [...(series.get(batch.series) ?? []), batch]);
  if (series.size === 0) return null;
  return (
    <section className="stack" aria-labelledby="kept-series">
      <h2 id="kept-series">Series kept</h2>
      {[...series].map(([name, members]) => (
        <div key={name} className="stack tight">
          <h3>{name}</h3>
          <p className="row">
            {members.map(({ id, place, name: full }) => (
              <Link key={id} className="cell-link" href={batchPath(study, id)} aria-label={full}>
                {place}
              </Link>
            ))}
          </p>
        </div>
      ))}
    </section>
  );
}

function typed(what: string, text: string): number {
  const number = readNumber(text);
  if (number === null) throw new RequirementError(`${what} needs a number; found “${text.trim()}”.`);
  return number;
}
