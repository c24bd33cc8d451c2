import { useState } from 'react';
import { FIGURE_FORMS, type FigureFormat, WIDEST_PNG } from '../../../api/contract/figure-names.ts';
import { Button } from '../Button.tsx';
import { saveFile } from '../CsvDownload.tsx';
import { ErrorNotice } from '../Notice.tsx';
import { Select } from '../Select.tsx';

const FORMATS: readonly { id: FigureFormat; label: string; hint: string }[] = [
  { id: 'slide-16-9', label: 'Slide, 16:9', hint: '339 × 191 mm, type of 20 pt' },
  { id: 'slide-4-3', label: 'Slide, 4:3', hint: '254 × 191 mm, type of 20 pt' },
  { id: 'column-single', label: 'Single column', hint: '85 mm wide' },
  { id: 'column-double', label: 'Double column', hint: '175 mm wide' },
  { id: 'page', label: 'Page, light', hint: '254 mm wide' },
  { id: 'page-dark', label: 'Page, dark', hint: '254 mm wide' },
];

/** What a file is made for, as the service is asked for it. */
export interface FileSheet {
  readonly format: FigureFormat;
  /** Of a PNG, px. */
  readonly width: number;
}
export interface FileChoicesProps {
  readonly figures: readonly { readonly id: string; readonly label: string }[];
  /** Where a file lies; or, where what is drawn must be sent along, how it is fetched. */
  readonly from:
    | { readonly address: (file: string, sheet: FileSheet) => string }
    | { readonly fetch: (file: string, sheet: FileSheet) => Promise<Blob> };
}

/** Figures as files, drawn by the service: what for, and then which and as what. */
export function FileChoices({ figures, from }: FileChoicesProps) {
  const [format, setFormat] = useState<FigureFormat>('slide-16-9');
  const sheet = { format, width: WIDEST_PNG };
  const { save, busy, error } = useSave(from);
  return (
    <div className="stack">
      <div className="look">
        <div className="wide">
          <Select label="Made for" choices={FORMATS} value={format} onChange={setFormat} />
        </div>
      </div>
      <ul className="plain-list">
        {figures.map(({ id, label }) => (
          <li key={id} className="row">
            <span>{label}</span>
            {FIGURE_FORMS.map((form) => {
              const file = `${id}.${form}`;
              const words = (
                <>
                  {form.toUpperCase()}
                  <span className="unseen"> of {label}</span>
                </>
              );
              return 'address' in from ? (
                <a key={form} className="button quiet" href={from.address(file, sheet)} download>
                  {words}
                </a>
              ) : (
                <Button key={form} look="quiet" isPending={busy === file} onPress={() => save(file, sheet)}>
                  {words}
                </Button>
              );
            })}
          </li>
        ))}
      </ul>
      <p className="faint small">
        SVG and PDF are vectors; the PDF carries its font. PNG is {WIDEST_PNG} px wide.
      </p>
      <ErrorNotice error={error} title="This figure cannot be drawn" />
    </div>
  );
}

function useSave(from: FileChoicesProps['from']) {
  const [busy, setBusy] = useState<string | null>(null);
  const [error, setError] = useState<unknown>(null);
  const save = async (file: string, sheet: FileSheet) => {
    if (!('fetch' in from)) return;
    setBusy(file);
    setError(null);
    try {
      const blob = await from.fetch(file, sheet);
      saveFile(file, blob, blob.type);
    } catch (refused) {
      setError(refused);
    } finally {
      setBusy(null);
    }
  };
  return { save, busy, error };
}
