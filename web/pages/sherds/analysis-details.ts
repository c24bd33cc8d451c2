import type { Analysis, NewAnalysis } from '../../../api/contract/analysis.ts';
import { blankRow, rowsOf, type ValueRow } from './reported-form.ts';

export type AnalysisDetails = Omit<NewAnalysis, 'specimen' | 'reported'>;
export interface AnalysisFormState {
  readonly details: AnalysisDetails;
  readonly rows: readonly ValueRow[];
}

const BLANK: AnalysisFormState = {
  details: {
    zone: null,
    measured: 'paint',
    technique: null,
    laboratory: '',
    instrument: '',
    date: null,
    source: '',
    doi: '',
    spot: '',
    note: '',
  },
  rows: Array.from({ length: 6 }, (_, key) => blankRow(key)),
};

/** The form as it opens: blank, or with what is stored. */
export function formStateOf(analysis: Analysis | null): AnalysisFormState {
  if (!analysis) return BLANK;
  const { zone, measured, technique, laboratory, instrument, date, source, doi, spot, note } = analysis;
  const details = { zone, measured, technique, laboratory, instrument, date, source, doi, spot, note };
  return { details, rows: rowsOf(analysis.reported) };
}
