import { useState } from 'react';
import { Form } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { Analysis } from '../../../api/contract/analysis.ts';
import { Button, LinkButton } from '../../parts/Button.tsx';
import { ErrorNotice, Notice } from '../../parts/Notice.tsx';
import { count } from '../../parts/numbers.ts';
import { useDraft } from '../../parts/useDraft.ts';
import { useSaveAnalysis } from '../../queries/analyses.ts';
import { useTiles } from '../../queries/fire.ts';
import { useLookups } from '../../queries/lookups.ts';
import { AnalysisFields } from './AnalysisFields.tsx';
import { formStateOf } from './analysis-details.ts';
import { analysisPath, specimenPath } from './paths.ts';
import { readRows } from './reported-form.ts';
import { ValuesGrid } from './ValuesGrid.tsx';

interface AnalysisFormProps {
  readonly study: string;
  readonly specimen: string;
  readonly analysis: Analysis | null;
}

export function AnalysisForm({ study, specimen, analysis }: AnalysisFormProps) {
  const [, navigate] = useLocation();
  const save = useSaveAnalysis(study, analysis?.id ?? null);
  const draft = useDraft(`analysis.${study}.${analysis?.id ?? specimen}`, formStateOf(analysis));
  const lookups = useLookups().data;
  const zones = useTiles(study).data?.find((tile) => tile.id === specimen)?.zones ?? [];
  const [tried, setTried] = useState(false);
  const { details, rows } = draft.value;
  const { reported, wrong } = readRows(rows);
  const back = analysis ? analysisPath(study, specimen, analysis.id) : specimenPath(study, specimen);
  const submit = () => {
    setTried(true);
    if (wrong.size > 0 || reported.length === 0) return;
    const done = (saved: Analysis) => {
      draft.clear();
      navigate(analysisPath(study, specimen, saved.id));
    };
    save.mutate({ ...details, specimen, reported }, { onSuccess: done });
  };
  return (
    <Form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      {draft.restored && <Notice>What you had typed before the reload is still here.</Notice>}
      <AnalysisFields
        details={details}
        zones={zones}
        techniques={lookups?.techniques ?? []}
        onChange={(next) => draft.set({ details: next, rows })}
      />
      <h2>Values as reported</h2>
      <ValuesGrid
        rows={rows}
        onChange={(next) => draft.set({ details, rows: next })}
        wrong={tried ? wrong : new Map()}
        analytes={(lookups?.analytes ?? []).map((one) => one.symbol)}
      />
      {tried && wrong.size > 0 && (
        <Notice kind="error" title={`${count(wrong.size, 'line')} cannot be read yet`}>
          <ul>
            {[...wrong].map(([key, message]) => (
              <li key={key}>{message}</li>
            ))}
          </ul>
        </Notice>
      )}
      {tried && wrong.size === 0 && reported.length === 0 && (
        <Notice kind="error">An analysis needs at least one value.</Notice>
      )}
      <ErrorNotice error={save.error} title="Not saved" />
      <div className="row">
        <Button look="primary" type="submit" isPending={save.isPending}>
          Save the analysis
        </Button>
        <LinkButton to={back}>Cancel</LinkButton>
      </div>
    </Form>
  );
}
