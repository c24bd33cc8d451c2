import { describe, expect, it } from 'vitest';
import { toCsv } from '../../api/services/csv.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();

describe('analyses as CSV', () => {
  const text = [
    'Specimen\tWare group\tMeasured\tSpot\tTechnique\tSiO2 (wt%)\tSiO2 ± 2σ (wt%)\tCu (ppm)\tLOI (wt%)',
    'A1\tRed\tpaint\t1\tEPMA\t41.30\t0.4\t<50\t2.1',
    'A1\tRed\tpaint\t2\tEPMA\t40.90\t0.4\t120\t-0.2',
    'A2\tRed\tbody\t\tpXRF\t61.0\t\t\t',
  ].join('\n');

  it('come back as they were reported when the table is brought in again', async () => {
    const { api } = used;
    const [first, second] = [await api.newStudy(), await api.newStudy()];
    expect((await api.bringIn(first, { text })).status).toBe('done');
    const csv = await api.get(`/api/studies/${first}/analyses.csv?figures=reported`);
    const again = await api.bringIn(second, { file: { name: 'again.csv', content: csv.text } });
    expect(again).toMatchObject({ status: 'done', analyses: 3, specimens: 2, groups: 1 });
    const told = async (study: string) =>
      (await api.get(`/api/studies/${study}/analyses`)).body.rows.map(
        ({ specimenLabel, measured, spot, technique, reported }: Record<string, unknown>) => ({
          ...{ specimenLabel, measured, spot, technique, reported },
        }),
      );
    expect(await told(second)).toEqual(await told(first));
  });

  it('come as oxides closed to 100, the raw total beside them', async () => {
    const { api } = used;
    const study = await api.newStudy();
    await api.bringIn(study, { text: 'Specimen\tMeasured\tSiO2 (wt%)\tPb (wt%)\nA1\tpaint\t40\t50' });
    const { text: csv } = await api.get(`/api/studies/${study}/analyses.csv?figures=normalised`);
    const [header, line] = csv
      .trim()
      .split('\r\n')
      .map((one) => one.split(','));
    const cell = (name: string) => Number(line![header!.indexOf(name)]);
    // 50 Pb × 1.07722 = 53.861 PbO, IUPAC 2021 weights (doi 10.1515/pac-2019-0603).
    expect(cell('Raw total (wt%)')).toBeCloseTo(93.861, 2);
    expect(cell('PbO (wt%)')).toBeCloseTo((100 * 53.861) / 93.861, 2);
    expect(cell('SiO2 (wt%)') + cell('PbO (wt%)')).toBeCloseTo(100, 9);
  });
});

describe('a table as CSV', () => {
  it('disarms formulas, also in cells of several lines, and leaves negative numbers alone', () => {
    const csv = toCsv(
      ['a', 'b'],
      [
        ['=1+1', -0.5],
        ['+x\ny', null],
        ['\tz', 'plain'],
        ['-a', '@b'],
      ],
    );
    expect(csv).toBe('\ufeffa,b\r\n"\'=1+1",-0.5\r\n"\'+x\ny",\r\n"\'\tz",plain\r\n"\'-a","\'@b"\r\n');
  });
});
