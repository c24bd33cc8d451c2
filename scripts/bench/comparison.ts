/**
 * The whole answer of a comparison over HTTP: 2,000 sherds in 10 groups with 12 oxides and 20 replicas, from the
 * stored analyses to the model and all placements, on the embedded database. Wanted: under 300 ms.
 */
import { clrInverse } from '../../api/domain/composition/log-ratio.ts';
import { randomStream } from '../../api/domain/statistics/random.ts';
import { onService } from './service.ts';
import { bestTime, ms, report } from './time.ts';

const OXIDES = ['SiO2', 'Al2O3', 'Fe2O3', 'MgO', 'CaO', 'Na2O', 'K2O', 'TiO2', 'MnO', 'CuO', 'SnO2', 'PbO'];
const WANTED = 300;

/** Invented analyses, seeded: 2,000 sherds in 10 groups and 20 replicas. */
export function analysesCsv(): string {
  const { normal } = randomStream(2000);
  const centres = Array.from({ length: 10 }, () => OXIDES.map(() => normal()));
  const cells = (g: number) =>
    clrInverse(centres[g]!.map((c, j) => c + 0.1 * (1 + j / 6) * normal())).map((part) => part.toFixed(4));
  const line = (label: string, group: string, kind: string, g: number) =>
    [label, group, kind, 'paint', ...cells(g)].join(',');
  return [
    ['Specimen', 'Ware group', 'Kind', 'Measured', ...OXIDES.map((oxide) => `${oxide} (wt%)`)].join(','),
    ...Array.from({ length: 2000 }, (_, i) => line(`Sherd ${i}`, `Group ${i % 10}`, 'sherd', i % 10)),
    ...Array.from({ length: 20 }, (_, i) => line(`Tile ${i}`, '', 'replica', i % 10)),
  ].join('\n');
}

export async function bench(): Promise<void> {
  await onService(async ({ api }) => {
    const study = await api.newStudy('Benchmark');
    const done = await api.bringIn(study, { file: { name: 'sherds.csv', content: analysesCsv() } });
    if (done.status !== 'done') throw new Error(done.outcome?.message);
    const groups = (await api.get(`/api/studies/${study}/groups`)).body.map(
      (group: { id: string }) => group.id,
    );
    const ask = async (covariance: object) => {
      const answer = await api.post(`/api/studies/${study}/comparison`, { settings: { groups, covariance } });
      if (answer.body.placements?.length !== 20) throw new Error(answer.text.slice(0, 300));
      return answer;
    };
    const { text } = await ask({ kind: 'auto' });
    report('size of the answer', `${(text.length / 1e6).toFixed(1)} MB`);
    for (const kind of ['auto', 'sample']) {
      const best = await bestTime(15, () => ask({ kind }));
      report(
        `2,000 sherds, 20 replicas, covariance ${kind}`,
        `${ms(best)}; ${(best / WANTED).toFixed(2)} of ${WANTED} ms`,
      );
    }
  });
}
