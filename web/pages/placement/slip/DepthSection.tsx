import type { DepthAnswer, DepthRequest } from '../../../../api/contract/slip-layer.ts';
import { INCOMING_ENERGIES } from '../../../../api/domain/slip/attenuation.generated.ts';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { showAnalyte, showPlain, showSignificant } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useReadingDepth } from '../../../queries/slip.ts';
import { NumberBox } from '../panel/NumberBox.tsx';
import { column, DownloadableTable, type TableColumn } from '../tables/DownloadableTable.tsx';
import { percent } from '../words.ts';
import { slipRef } from './refs.ts';
import type { SlipSectionProps } from './section-props.ts';
import { useNow } from './useSlip.ts';

/** How the layer was and how it was read. Lengths in µm, density in g/cm³, energies in keV, angles in degrees. */
interface Reading {
  readonly thickness: number | null;
  readonly density: number | null;
  readonly incoming: number;
  readonly inAngle: number;
  readonly outAngle: number;
  readonly electrons: number | null;
}
const START: Reading = {
  thickness: null,
  density: null,
  incoming: 20,
  inAngle: 45,
  outAngle: 45,
  electrons: null,
};

/** How deep a paint is read, oxide by oxide, and what of it comes from the slip. */
export function DepthSection(at: SlipSectionProps) {
  const { slip, replica } = at;
  const draft = useDraft<Reading>(`reading-depth.1.${slip.study}.${replica.id}`, START);
  const source = useNow(slip, replica.id, (now) => now?.choice?.source);
  const request = requestOf(at, draft.value, source ? slipRef(source, replica.id) : null);
  const found = useReadingDepth(slip.study, request);
  return (
    <>
      <p className="faint">
        Each oxide’s X-rays come from another depth. Where the paint is thin, some oxides read the paint and
        others the slip, so that no single f fits them all.
      </p>
      <Fields value={draft.value} onChange={(part) => draft.set({ ...draft.value, ...part })} />
      {request === null && <p className="small faint">Give the paint’s thickness and density.</p>}
      {request && <ErrorNotice error={found.error} title="The depth cannot be reckoned" />}
      {request && found.data && <DepthView answer={found.data as DepthAnswer} label={replica.label} />}
    </>
  );
}

function requestOf(
  { result, replica }: SlipSectionProps,
  { thickness, density, ...beam }: Reading,
  slip: DepthRequest['slip'],
): DepthRequest | null {
  if (thickness === null || density === null) return null;
  const { normalisation, settings } = result.request;
  const paint = { kind: 'specimen', specimen: replica.id, measured: 'paint' } as const;
  return { normalisation, fraction: settings.replacement.fraction, paint, slip, thickness, density, ...beam };
}

const upTo = (most: number) => (x: number) => (x > 0 && x <= most ? null : `lies above 0 and up to ${most}`);

function Fields(at: { readonly value: Reading; readonly onChange: (part: Partial<Reading>) => void }) {
  const { value, onChange } = at;
  const box = (key: 'thickness' | 'density' | 'electrons', label: string, most: number) => (
    <NumberBox
      label={label}
      optional
      value={value[key]}
      fault={upTo(most)}
      onChange={(x) => onChange({ [key]: x })}
    />
  );
  const angle = (key: 'inAngle' | 'outAngle', label: string) => (
    <NumberBox
      label={label}
      value={value[key]}
      fault={upTo(90)}
      onChange={(x) => onChange({ [key]: x ?? 45 })}
    />
  );
  return (
    <div className="slip-choice numbers">
      {box('thickness', 'Thickness, µm', 100_000)}
      {box('density', 'Density, g/cm³', 25)}
      <Select
        label="X-ray beam"
        choices={INCOMING_ENERGIES.map((energy) => ({ id: String(energy), label: `${energy} keV` }))}
        value={String(value.incoming)}
        onChange={(id) => onChange({ incoming: Number(id) })}
      />
      {angle('inAngle', 'Beam to surface, °')}
      {angle('outAngle', 'Detector to surface, °')}
      {box('electrons', 'Electron beam, keV', 100)}
    </div>
  );
}

interface Row {
  readonly oxide: string;
  readonly line: DepthAnswer['depths'][number]['line'];
  readonly depth99: number;
  readonly electron: number | null;
  readonly reading: NonNullable<DepthAnswer['readings']>[number] | null;
  readonly corrected: number | null;
}
const right = { numeric: true } as const;
const dash = (x: number | null, show: (x: number) => string) => (x === null ? '–' : show(x));
const COLUMNS: TableColumn<Row>[] = [
  column('oxide', 'Oxide', (row) => row.oxide, { header: true, cell: (row) => showAnalyte(row.oxide) }),
  column('line', 'Line', ({ line }) => `${line.element} ${line.shell}α ${line.energy.toFixed(2)} keV`),
  column('depth', '99 % from the upper, µm', (row) => row.depth99, {
    ...right,
    cell: (row) => showSignificant(row.depth99),
  }),
  column('share', 'From the slip', (row) => row.reading?.substrateShare ?? null, {
    ...right,
    cell: (row) => dash(row.reading?.substrateShare ?? null, percent),
  }),
  column('reads', 'It reads', (row) => row.reading?.reads ?? null, {
    cell: (row) => row.reading?.reads ?? '–',
  }),
  column('corrected', 'Corrected by line, wt%', (row) => row.corrected, {
    ...right,
    cell: (row) => dash(row.corrected, showSignificant),
  }),
  column('electron', 'By electrons, µm', (row) => row.electron, {
    ...right,
    cell: (row) => dash(row.electron, showSignificant),
  }),
];

function rowsOf({ depths, readings, corrected, electrons }: DepthAnswer): Row[] {
  return depths.map(({ oxide, line, depth99 }) => ({
    oxide,
    line,
    depth99,
    reading: readings?.find((one) => one.oxide === oxide) ?? null,
    corrected: corrected?.oxides[oxide] ?? null,
    electron: electrons?.lines.find((one) => one.oxide === oxide)?.depth ?? null,
  }));
}

function shown({ readings, corrected, electrons }: DepthAnswer): TableColumn<Row>[] {
  const there: Record<string, boolean> = {
    share: readings !== null,
    reads: readings !== null,
    corrected: corrected !== null,
    electron: electrons !== null,
  };
  return COLUMNS.filter(({ id }) => there[id] ?? true);
}

const READS = [
  ['mostly slip', 'mostly the slip'],
  ['both', 'paint and slip'],
  ['mostly paint', 'mostly the paint'],
  ['paint', 'the paint'],
] as const;

/** `This reading sees mostly the slip in Fe₂O₃; paint and slip in TiO₂; the paint in SiO₂.` */
function gistOf({ readings }: DepthAnswer): string | null {
  if (readings === null) return null;
  const said = READS.flatMap(([reads, words]) => {
    const oxides = readings.filter((one) => one.reads === reads).map(({ oxide }) => showAnalyte(oxide));
    return oxides.length > 0 ? [`${words} in ${oxides.join(', ')}`] : [];
  });
  return `This reading sees ${said.join('; ')}.`;
}

function DepthView({ answer, label }: { readonly answer: DepthAnswer; readonly label: string }) {
  const { warnings, corrected, correctionRefusal, electrons, slip } = answer;
  const gist = gistOf(answer);
  const through = answer.readings?.some(({ reads }) => reads === 'mostly slip' || reads === 'both') ?? false;
  const notes = [...warnings, ...(corrected?.warnings ?? [])];
  return (
    <div className="stack">
      {gist && (
        <Notice kind={through ? 'caution' : 'info'}>
          <p>{gist}</p>
          {through && (
            <p>
              No single f fits these oxides all; the correction line by line is rougher than a reading in
              section.
            </p>
          )}
        </Notice>
      )}
      {slip === null && <p className="small">Choose a slip above to see how much comes from it.</p>}
      {correctionRefusal && (
        <Notice kind="caution" title="The reading cannot be corrected line by line">
          <p>{correctionRefusal}</p>
        </Notice>
      )}
      {notes.map((note) => (
        <p key={note} className="small">
          {note}
        </p>
      ))}
      {electrons && (
        <p className="small">Electrons reach {showPlain(electrons.range, 3)} µm into this paint.</p>
      )}
      <DownloadableTable
        label={`How deep ${label} is read`}
        file={`${label} reading depth`}
        columns={shown(answer)}
        fileColumns={COLUMNS}
        rows={rowsOf(answer)}
        rowKey={(row) => row.oxide}
      />
      <p className="small faint">
        One energy stands for the whole beam; fluorescence of one element by another is left aside. These
        figures carry no uncertainty of their own: that of thickness and density goes through them in
        proportion.
      </p>
    </div>
  );
}
