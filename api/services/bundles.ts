import { randomUUID } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import type { Database, Transaction } from '../../db/connect.ts';
import { analysis, placement, specimen, study, technique, wareGroup } from '../../db/schema/schema.ts';
import type { BundledPlacement, BundleTaken } from '../contract/bundle.ts';
import type { ComparisonData } from '../contract/comparison-data.ts';
import { figureLook } from '../contract/figure.ts';
import type { Comparison } from '../contract/placement.ts';
import { packBundle } from '../export/bundle/pack.ts';
import { type UnpackedBundle, unpackBundle } from '../export/bundle/unpack.ts';
import type { Caller } from './access.ts';
import { compare } from './comparison.ts';
import { Failure } from './failure.ts';
import { firstDifference } from './first-difference.ts';
import { naturalOrder } from './natural-order.ts';
import { readKept, textOf } from './placement-figures.ts';
import { VERSION } from './version.ts';

/** A kept placement with its data, settings, result, figures and words as one zip. */
export async function placementBundle(
  caller: Caller,
  studyId: string,
  placementId: string,
): Promise<Uint8Array> {
  const kept = await readKept(caller, studyId, placementId);
  if (!kept.frozen)
    throw new Failure(
      'conflict',
      'a bundle needs the data as it was when the placement was kept; this one was kept without. Keep it again.',
    );
  const { name, note, version, createdAt, result, data } = kept;
  const bundled = { name, note, version, createdAt, request: result.request, result };
  return packBundle({ placement: bundled, data, text: textOf(kept, figureLook.parse({})) });
}

/**
 * Brings a bundle in as a study of its own. The comparison is made again from the data in it. Where it gives other
 * numbers, a bundle of this version is refused; of one by another version the numbers computed here are kept, and the
 * placement says so: what could not be computed again is never shown as if it had been.
 */
export async function takeBundle({ db, who }: Caller, bytes: Uint8Array): Promise<BundleTaken> {
  const bundle = withNewIds(await unpackBundle(bytes));
  await requireTechniques(db, bundle.data);
  return db.transaction(async (tx) => {
    const studyId = await insertData(tx, bundle);
    const caller: Caller = { db: tx as unknown as Database, who };
    const again = await compare(caller, studyId, bundle.placement.request);
    const differs = differenceTo(bundle.placement, again);
    const kept = differs === null ? bundle.placement : anew(bundle.placement, again, differs);
    const { groups, specimens, analyses } = bundle.data;
    return {
      ...{ study: studyId, placement: await insertPlacement(tx, studyId, { ...bundle, placement: kept }) },
      ...{ name: kept.name, differs, groups: groups.length },
      ...{ specimens: specimens.length, analyses: analyses.length },
    };
  });
}

const UUID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;

/**
 * Rows of another installation under ids of this one. The new ids rise in the order of the rows: where a comparison
 * has nothing else to order by, it reads them as it did there.
 */
function withNewIds({ placement, data }: UnpackedBundle): UnpackedBundle {
  const renamed = new Map<string, string>();
  for (const rows of [data.groups, data.specimens, data.analyses]) {
    const fresh = rows.map(() => randomUUID()).sort();
    rows.forEach(({ id }, i) => {
      renamed.set(id, fresh[i]!);
    });
  }
  const rename = <Value>(value: Value): Value =>
    JSON.parse(JSON.stringify(value).replace(UUID, (id) => renamed.get(id) ?? id));
  return { placement: rename(placement), data: rename(data) };
}

async function requireTechniques(db: Database, { analyses }: ComparisonData): Promise<void> {
  const here = new Map((await db.select().from(technique)).map((one) => [one.code, one.relativeError]));
  for (const { technique: code, relativeError } of analyses) {
    if (code === null) continue;
    if (!here.has(code)) throw new Failure('invalid', `every technique must be known here; ${code} is not.`);
    if (here.get(code) !== relativeError)
      throw new Failure(
        'invalid',
        `a technique must be taken to be as exact here as there; of ${code} a relative error of ${here.get(code)} is assumed here, ${relativeError} there.`,
      );
  }
}

async function insertData(tx: Transaction, { placement: bundled, data }: UnpackedBundle): Promise<string> {
  const studyId = randomUUID();
  const notes = `From a bundle made on ${bundled.createdAt.slice(0, 10)} by version ${bundled.version}.`;
  await tx.insert(study).values({ id: studyId, name: bundled.name, notes });
  const groups = data.groups.map((group) => ({ ...group, studyId }));
  const specimens = data.specimens.map(({ group, ...one }) => ({
    ...{ ...one, studyId, wareGroupId: group },
    labelOrder: naturalOrder(one.label),
    catalogueOrder: naturalOrder(one.catalogueNumber),
  }));
  const analyses = data.analyses.map(({ specimen: specimenId, relativeError: _, ...one }) => ({
    ...{ ...one, specimenId, studyId },
  }));
  for (const rows of chunks(groups)) await tx.insert(wareGroup).values(rows);
  for (const rows of chunks(specimens)) await tx.insert(specimen).values(rows);
  for (const rows of chunks(analyses)) await tx.insert(analysis).values(rows);
  return studyId;
}

function* chunks<Row>(rows: readonly Row[], size = 500): Generator<Row[]> {
  for (let at = 0; at < rows.length; at += size) yield rows.slice(at, at + size);
}

/** Why this version's numbers are others than the bundle's, in words; null where they are the same. */
function differenceTo({ result, version }: BundledPlacement, again: Comparison): string | null {
  const computed: unknown = JSON.parse(JSON.stringify(again));
  if (isDeepStrictEqual(computed, result)) return null;
  const where = firstDifference(result, computed);
  if (version === VERSION)
    throw new Failure(
      'invalid',
      `the data of a bundle must give its result again, number by number; ${where} is another.`,
    );
  return `The bundle is by version ${version}, which gave other numbers (the first is ${where}). Version ${VERSION} has computed it again from the bundle's data; these are its numbers.`;
}

/** The placement as this version computes it, with what is to be known of that before the note it came with. */
const anew = (bundled: BundledPlacement, result: Comparison, differs: string): BundledPlacement => ({
  ...{ ...bundled, result, version: VERSION },
  note: [differs, bundled.note].filter(Boolean).join('\n\n'),
});

async function insertPlacement(
  tx: Transaction,
  studyId: string,
  { placement: bundled, data }: UnpackedBundle,
): Promise<string> {
  const { name, note, version, createdAt, request, result } = bundled;
  const sentences = result.placements.map(({ sentence }) => sentence);
  const [row] = await tx
    .insert(placement)
    .values({
      ...{ studyId, name, note, version, sentences, settings: request, result, data },
      createdAt: new Date(createdAt),
    })
    .returning({ id: placement.id });
  return row!.id;
}
