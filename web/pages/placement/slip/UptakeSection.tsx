import { useState } from 'react';
import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import type { UptakeAnswer, UptakeRequest } from '../../../../api/contract/slip-layer.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { showSignificant } from '../../../parts/numbers.ts';
import { OneOf } from '../../../parts/Tick.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useUptake } from '../../../queries/slip.ts';
import { column, DownloadableTable, type TableColumn } from '../tables/DownloadableTable.tsx';
import { FromZones } from './FromZones.tsx';
import type { SlipSectionProps } from './section-props.ts';
import { readNumbers } from './typed-rows.ts';
import { showOff, showShare } from './words.ts';

const LAWS = [
  {
    id: 'dissolved layer',
    label: 'A dissolved layer',
    hint: 'Readings of the paint in section: f = d/(d + t)',
  },
  { id: 'seen through', label: 'Seen through', hint: 'XRF through the surface: f = exp(−t/d)' },
] as const;
interface Typed {
  readonly law: UptakeRequest['law'];
  readonly tiles: string;
  readonly sherds: string;
}
const START: Typed = { law: 'dissolved layer', tiles: '', sherds: '' };

/** How slip falls with thickness, learnt from tiles, and its use on references whose thickness is known. */
export function UptakeSection(at: SlipSectionProps) {
  const { slip } = at;
  const draft = useDraft<Typed>(`uptake.1.${slip.study}`, START);
  const [asked, setAsked] = useState<UptakeRequest | null>(null);
  const found = useUptake(slip.study, asked);
  const { law, tiles, sherds } = draft.value;
  const change = (part: Partial<Typed>) => draft.set({ ...draft.value, ...part });
  const read = requestOf(at, draft.value);
  return (
    <>
      <p className="faint">
        From tiles whose slip was found from their batch, and whose paint was measured in section: the thicker
        the paint, the smaller the share of slip in it.
      </p>
      <OneOf
        label="How slip gets into the reading"
        choices={LAWS}
        value={law}
        onChange={(next) => change({ law: next })}
      />
      <FromZones {...at} onTake={(lines) => change({ tiles: [tiles, lines].filter(Boolean).join('\n') })} />
      <Field
        label="Tiles"
        hint="One a line: name; thickness µm; ± µm; f; ± of f"
        lines={5}
        value={tiles}
        onChange={(text) => change({ tiles: text })}
        wrong={read.tilesWrong}
        whole
      />
      <Field
        label="Reference sherds"
        hint="One a line: label; paint thickness µm; ± µm"
        lines={4}
        value={sherds}
        onChange={(text) => change({ sherds: text })}
        wrong={read.sherdsWrong}
        whole
      />
      <div className="row">
        <Button look="primary" onPress={() => setAsked(read.request)} isDisabled={read.request === null}>
          Learn from the tiles
        </Button>
      </div>
      <ErrorNotice error={found.error} title="Nothing can be learnt from these tiles" />
      {asked && found.data && <Learnt {...at} answer={found.data as UptakeAnswer} />}
    </>
  );
}

function requestOf({ result }: SlipSectionProps, { law, tiles, sherds }: Typed) {
  const tileRows = readNumbers(tiles, 4);
  const sherdRows = readNumbers(sherds, 2);
  const byLabel = new Map(result.references.map(({ label, id }) => [label, id]));
  const unknown = (sherdRows ?? []).filter(({ label }) => !byLabel.has(label)).map(({ label }) => label);
  const tilesWrong = tileRows === null ? 'needs a name and four numbers on each line, with ; between' : null;
  const sherdsWrong =
    sherdRows === null
      ? 'needs a label and two numbers on each line, with ; between'
      : unknown.length > 0
        ? `no reference sherd here is called ${unknown.join(', ')}`
        : null;
  const bad = tilesWrong !== null || sherdsWrong !== null || tileRows!.length === 0;
  const request: UptakeRequest | null = bad
    ? null
    : {
        law,
        tiles: tileRows!.map(({ label, numbers: [thickness, thicknessSigma, f, sigma] }) => ({
          ...{ label, thickness: thickness!, thicknessSigma: thicknessSigma!, f: f!, sigma: sigma! },
        })),
        apply: sherdRows!.map(({ label, numbers: [thickness, sigma] }) => ({
          ...{ specimen: byLabel.get(label) ?? null, label, thickness: thickness!, sigma: sigma! },
        })),
      };
  return { request, tilesWrong, sherdsWrong };
}

type Applied = UptakeAnswer['applied'][number];
type Tile = UptakeAnswer['uptake']['tiles'][number];
const right = { numeric: true } as const;
const TILES: TableColumn<Tile>[] = [
  column('label', 'Tile', (row) => row.label, { header: true }),
  column('thickness', 'Thickness, µm', (row) => row.thickness, {
    ...right,
    cell: (row) => `${showSignificant(row.thickness)} ± ${showSignificant(row.thicknessSigma, 2)}`,
  }),
  column('f', 'f', (row) => row.f, {
    ...right,
    cell: (row) => `${showShare(row.f)} ± ${showShare(row.sigma)}`,
  }),
  column('expected', 'f by the law', (row) => row.expected, {
    ...right,
    cell: (row) => showShare(row.expected),
  }),
  column('z', 'Off, in standard uncertainties', (row) => row.z, {
    ...right,
    cell: (row) => showOff(row.z),
  }),
];
const SHERDS: TableColumn<Applied>[] = [
  column('label', 'Sherd', (row) => row.label, { header: true }),
  column('f', 'f', (row) => row.estimate.f, { ...right, cell: (row) => showShare(row.estimate.f) }),
  column('low', '95 % interval from', (row) => row.estimate.low, {
    ...right,
    cell: (row) => showShare(row.estimate.low),
  }),
  column('high', 'to', (row) => row.estimate.high, { ...right, cell: (row) => showShare(row.estimate.high) }),
];

function Learnt({ answer, slip }: SlipSectionProps & { readonly answer: UptakeAnswer }) {
  const { uptake, applied } = answer;
  const choices = applied.flatMap((one): SlipChoice[] => choiceOf(one));
  const lacking = applied.filter(({ specimen }) => !slip.shelf.slips.some(({ id }) => id === specimen));
  return (
    <div className="stack">
      <p className="estimate-value">
        Depth {showSignificant(uptake.depth)} µm, 95 % interval {showSignificant(uptake.low)}–
        {showSignificant(uptake.high)} µm, from {uptake.n} tiles of {uptake.thicknesses[0]}–
        {uptake.thicknesses[1]} µm.
      </p>
      <p>{uptake.consistency.sentence}</p>
      <p className="small faint">{uptake.reason}</p>
      {uptake.warnings.length > 0 && (
        <Notice kind="caution">
          {uptake.warnings.map((warning) => (
            <p key={warning}>{warning}</p>
          ))}
        </Notice>
      )}
      <DownloadableTable
        label="Tiles and the law"
        file="uptake tiles"
        columns={TILES}
        rows={uptake.tiles}
        rowKey={(row) => row.label}
      />
      {applied.length > 0 && (
        <>
          <DownloadableTable
            label="Slip in reference sherds by thickness"
            file="uptake sherds"
            columns={SHERDS}
            rows={applied}
            rowKey={(row) => row.label}
          />
          {lacking.length > 0 && (
            <p className="small">
              Without a slip analysis of their own, so that none can be drawn off:{' '}
              {lacking.map(({ label }) => label).join(', ')}.
            </p>
          )}
          <div className="row">
            <Button onPress={() => slip.references.set(choices)}>Draw it off these references</Button>
          </div>
        </>
      )}
      {slip.references.value.length > 0 && (
        <div className="row">
          <span>Slip is drawn off {slip.references.value.length} references.</span>
          <Button look="quiet" onPress={() => slip.references.clear()}>
            Put it back in
          </Button>
        </div>
      )}
    </div>
  );
}

function choiceOf({ specimen, estimate }: Applied): SlipChoice[] {
  if (specimen === null || estimate.cannotTell !== null) return [];
  const { f, sigma, df } = estimate;
  const kept = { f: Math.min(0.99, f), sigma: Math.min(1, sigma), df };
  return [{ specimen, source: { kind: 'own' }, ...kept, from: 'thickness', unmeasured: 'none' }];
}
