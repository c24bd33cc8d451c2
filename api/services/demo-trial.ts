import { createHash, randomUUID } from 'node:crypto';
import type { Transaction } from '../../db/connect.ts';
import { firing } from '../../db/schema/schema.ts';
import { THRESHOLDS } from '../contract/firing.ts';
import { readLog } from '../intake/logs.ts';
import { type InventedLog, inventedLog } from './demo/firing-log.ts';
import { DEMO_FIRINGS, DEMO_TILES, type DemoTile, thicknessOf } from './demo/trial.ts';
import { insertPictures } from './demo-pictures.ts';
import { withId } from './sheet.ts';
import { logColumns } from './stored-log.ts';
import { insertTile } from './tiles.ts';
import { emptyGrid } from './zone-grid.ts';

/** Fires the demo study's nine tiles: two firings, and the zones of each tile with what was seen. */
export async function insertTrial(
  tx: Transaction,
  studyId: string,
  specimens: ReadonlyMap<string, string>,
): Promise<void> {
  const firings = await Promise.all(
    DEMO_FIRINGS.map(async ({ log, readings, ...one }) => ({
      ...{
        ...one,
        readings: readings.map(withId),
        id: randomUUID() as string,
        studyId,
        thresholds: THRESHOLDS,
      },
      ...(await readInvented(log)),
    })),
  );
  await tx.insert(firing).values(firings);
  for (const tile of DEMO_TILES) {
    const specimen = specimens.get(tile.label);
    const fire = firings.find((one) => one.name === tile.firing)!;
    if (specimen) await insertTile(tx, studyId, { ...tileOf(tile), specimen, firing: fire.id });
  }
  await insertPictures(tx, studyId, specimens);
}

/** The invented log, read as any other is. */
async function readInvented(log: InventedLog) {
  const bytes = new TextEncoder().encode(inventedLog(log));
  async function* whole() {
    yield bytes;
  }
  const sensor = { kind: 'class', type: 'K', class: 2 } as const;
  const read = await readLog(whole(), { choices: { sensor } });
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return logColumns(read, { name: log.fileName, bytes: bytes.length, sha256 }, 0);
}

const ROWS = 2;
const COLUMNS = 3;

function tileOf({ place, settings, coats, grades, colours }: DemoTile) {
  const zones = emptyGrid(ROWS, COLUMNS).map((zone, i) => ({
    ...{ ...zone, coats: coats[i]!, micrometres: thicknessOf(coats[i]!, i), grade: grades[i]! },
    glassyShare: { matt: 0, satin: 0.3, glossy: 0.9 }[grades[i]!],
    colour: colours[i]!,
  }));
  return { place, position: null, rows: ROWS, columns: COLUMNS, settings, zones };
}
