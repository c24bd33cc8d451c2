import type { AnalysedRef } from '../contract/slip-reading.ts';
import { fireBatch } from '../domain/batch/batch.ts';
import { fireOfEntry, linesOfEntries } from '../domain/batch/bench-shelf.ts';
import { predictedParts } from '../domain/batch/from-study.ts';
import type { Amount, Sample } from '../domain/composition/types.ts';
import { RequirementError } from '../domain/requirement.ts';
import { meanOfAnalyses } from '../domain/slip/mean-slip.ts';
import type { Analysed } from '../domain/slip/types.ts';
import type { Caller } from './access.ts';
import { readBatch } from './batches.ts';
import { readShelf } from './bench-shelf.ts';
import { type Basis, groupNames, readMeasured } from './slip-samples.ts';

/** The composition that a request names, closed to 100. */
export async function readAnalysed(
  caller: Caller,
  studyId: string,
  { ref, basis }: { readonly ref: AnalysedRef; readonly basis: Basis },
): Promise<Analysed> {
  switch (ref.kind) {
    case 'specimen':
      return analysedOf(await oneMeasured(caller, studyId, { ...basis, ...ref }));
    case 'group':
      return groupMean(caller, studyId, { ...basis, ...ref });
    case 'batch':
      return predicted(caller, studyId, ref.batch);
    case 'typed':
      return typed(ref);
  }
}

interface OneOf extends Basis {
  readonly specimen: string;
  readonly measured: Sample['measured'];
}

/** One thing measured on one specimen; refuses with the reason where there is none. */
export async function oneMeasured(
  caller: Caller,
  studyId: string,
  { specimen, ...wanted }: OneOf,
): Promise<Sample> {
  const { samples, excluded } = await readMeasured(caller, studyId, { ...wanted, specimens: [specimen] });
  const [found] = samples;
  if (found) return found;
  const why = excluded[0]?.reason ?? 'there is none';
  throw new RequirementError(
    `this needs an analysis of the ${wanted.measured} of the specimen chosen; ${why}`,
  );
}

const analysedOf = ({ label, measured, spots, amounts }: Sample): Analysed => ({
  label: measured === 'paint' ? label : `${measured} of ${label}`,
  spots,
  amounts,
});

async function groupMean(
  caller: Caller,
  studyId: string,
  { group, ...wanted }: Basis & { readonly group: string; readonly measured: Sample['measured'] },
): Promise<Analysed> {
  const { samples } = await readMeasured(caller, studyId, { ...wanted, specimens: [], groups: [group] });
  const name = (await groupNames(caller, studyId))[group] ?? 'the ware group chosen';
  if (samples.length === 0)
    throw new RequirementError(`this needs an analysis of the ${wanted.measured} of ${name}; there is none`);
  return meanOfAnalyses(`mean ${wanted.measured} of ${name}`, samples);
}

async function predicted(caller: Caller, studyId: string, batchId: string): Promise<Analysed> {
  const { name, lines, fire } = await readBatch(caller, studyId, batchId);
  const shelf = await readShelf(caller, studyId);
  const parts = predictedParts(fireBatch(linesOfEntries(lines, shelf), fireOfEntry(fire)));
  const amounts = Object.entries(parts).map(([oxide, { value, sigma }]) => [oxide, amountOf(value, sigma)]);
  return { label: `batch ${name}`, spots: 1, amounts: Object.fromEntries(amounts) };
}

function typed({ label, oxides, relativeError }: Extract<AnalysedRef, { kind: 'typed' }>): Analysed {
  const total = Object.values(oxides).reduce((sum, wt) => sum + wt, 0);
  if (!(total > 0))
    throw new RequirementError('a typed composition needs at least one oxide above 0 wt%; there is none');
  const amounts = Object.entries(oxides).map(([oxide, wt]) => {
    const value = (100 * wt) / total;
    return [oxide, amountOf(value, relativeError === null ? null : relativeError * value)];
  });
  return { label, spots: 1, amounts: Object.fromEntries(amounts) };
}

const amountOf = (value: number, sigma: number | null): Amount => ({
  value,
  limit: null,
  sigma: sigma || null,
  sigmaBasis: sigma ? 'stated' : null,
  resolution: null,
});
