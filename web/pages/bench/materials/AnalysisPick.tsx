import { useState } from 'react';
import type { Analysis } from '../../../../api/contract/analysis.ts';
import { normaliseAnalysis } from '../../../../api/domain/composition/normalise.ts';
import { DEFAULT_NORMALISATION, MEASURED, type Measured } from '../../../../api/domain/composition/types.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useAnalyses } from '../../../queries/analyses.ts';
import { attempt } from '../parts/attempt.ts';
import { type MaterialForm, textOfAnalysis } from './material-form.ts';

const CHOICES = MEASURED.map((id) => ({ id, label: `${id[0]?.toUpperCase()}${id.slice(1)}` }));

/** Fills the form from an analysis already in the study: a clay, an ore, a slip. */
export function AnalysisPick(at: {
  readonly study: string;
  readonly onPick: (part: Partial<MaterialForm>) => void;
}) {
  const [measured, setMeasured] = useState<Measured>('whole');
  const [chosen, setChosen] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const rows = useAnalyses(at.study, { measured, limit: 1000 }).data?.rows ?? [];
  const pick = (id: string) => {
    setChosen(id);
    const analysis = rows.find((row) => row.id === id);
    if (!analysis) return;
    const made = attempt(() => filledFrom(analysis));
    setRefusal(made.reason);
    if (made.value) at.onPick(made.value);
  };
  return (
    <div className="stack tight">
      <div className="fields">
        <Select label="Analyses of" choices={CHOICES} value={measured} onChange={setMeasured} />
        {rows.length > 0 && (
          <Select
            label="Take over an analysis of this study"
            choices={rows.map((row) => ({
              id: row.id,
              label: row.spot ? `${row.specimenLabel}, ${row.spot}` : row.specimenLabel,
              hint: row.laboratory || undefined,
            }))}
            value={chosen}
            onChange={pick}
          />
        )}
      </div>
      {rows.length === 0 && (
        <p className="faint small">The study holds no analysis of that; type one in below.</p>
      )}
      {refusal && <Notice kind="error">{refusal}</Notice>}
    </div>
  );
}

/** In oxides as analysed, before closure; what lies below detection is left out. */
function filledFrom({ reported, specimen, specimenLabel, laboratory }: Analysis): Partial<MaterialForm> {
  const { amounts } = normaliseAnalysis(reported, { ...DEFAULT_NORMALISATION, volatileFree: false });
  const found = Object.entries(amounts).filter(([name, one]) => one.value !== null && name !== 'LOI');
  const values = Object.fromEntries(found.map(([name, one]) => [name, one.value ?? 0]));
  const sigma = Object.fromEntries(
    found.flatMap(([name, one]) => (one.sigma === null ? [] : [[name, one.sigma]])),
  );
  const loss = amounts.LOI?.value ?? null;
  return {
    values: textOfAnalysis(values, sigma, loss),
    specimen,
    source: [`analysis of ${specimenLabel}`, laboratory].filter(Boolean).join(', '),
  };
}
