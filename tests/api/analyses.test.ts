import { beforeAll, describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let path: string;
let sherd: string;
beforeAll(async () => {
  const study = await used.api.newStudy();
  path = `/api/studies/${study}/analyses`;
  sherd = (await used.api.post(`/api/studies/${study}/specimens`, { label: 'A1' })).body.id;
});
const wish = (reported: object[], more: object = {}) => ({
  specimen: sherd,
  measured: 'paint',
  reported,
  ...more,
});

describe('analyses', () => {
  it('keep every figure as it was reported', async () => {
    const reported = [
      { analyte: 'pbo', value: 36.7, uncertainty: 0.4, basis: '1σ', resolution: 0.1 },
      { analyte: 'SnO2', belowDetection: true, limit: 0.05 },
      { analyte: 'Cu', value: 4200, unit: 'ppm' },
    ];
    const about = {
      technique: 'SEM-EDS',
      laboratory: 'Lab',
      date: '2024-05',
      doi: 'doi:10.1007/s00216-011-5597-8',
      spot: 'a',
    };
    const made = await used.api.post(path, wish(reported, about));
    expect(made.status).toBe(201);
    const read = await used.api.get(`${path}/${made.body.id}`);
    expect(read.body).toMatchObject({
      ...about,
      doi: '10.1007/s00216-011-5597-8',
      specimenLabel: 'A1',
      import: null,
    });
    expect(read.body.reported).toEqual([
      {
        analyte: 'PbO',
        value: 36.7,
        unit: 'wt%',
        uncertainty: 0.4,
        basis: '1σ',
        belowDetection: false,
        limit: null,
        resolution: 0.1,
      },
      {
        analyte: 'SnO2',
        value: null,
        unit: 'wt%',
        uncertainty: null,
        basis: null,
        belowDetection: true,
        limit: 0.05,
        resolution: null,
      },
      {
        analyte: 'Cu',
        value: 4200,
        unit: 'ppm',
        uncertainty: null,
        basis: null,
        belowDetection: false,
        limit: null,
        resolution: null,
      },
    ]);
  });

  it.each([
    [[{ analyte: 'colour', value: 3 }], 'reported.0', 'an analyte is an element, an oxide, LOI or Total'],
    [
      [
        { analyte: 'PbO', value: 3 },
        { analyte: 'PbO', value: 4 },
      ],
      'reported.1',
      'PbO is there twice',
    ],
    [[{ analyte: 'PbO', value: -3 }], 'reported.0', 'PbO is -3'],
    [[{ analyte: 'PbO' }], 'reported.0', 'PbO has neither'],
    [[{ analyte: 'PbO', value: 2, belowDetection: true }], 'reported.0', 'PbO has 2'],
    [[{ analyte: 'PbO', value: 'much' }], 'reported.0.value', 'expected number'],
    [[{ analyte: 'PbO', value: 2, unit: 'mol' }], 'reported.0.unit', 'wt%'],
    [
      [
        { analyte: 'Fe', value: 2 },
        { analyte: 'Fe2O3', value: 3 },
      ],
      'reported',
      'Fe',
    ],
    [[], 'reported', 'at least one value'],
  ])('refuse %j at %s', async (reported, at, message) => {
    const refused = await used.api.post(path, wish(reported));
    expect(refused.status).toBe(422);
    expect(refused.body.faults[0].at).toBe(at);
    expect(refused.body.detail).toContain(message);
  });

  it('refuse a technique and a specimen that nobody knows', async () => {
    const technique = await used.api.post(
      path,
      wish([{ analyte: 'PbO', value: 1 }], { technique: 'guessing' }),
    );
    expect(technique).toMatchObject({ status: 422, body: { faults: [{ at: 'technique' }] } });
    const stranger = '00000000-0000-4000-8000-000000000000';
    const specimen = await used.api.post(path, {
      ...wish([{ analyte: 'PbO', value: 1 }]),
      specimen: stranger,
    });
    expect(specimen).toMatchObject({ status: 422, body: { faults: [{ at: 'specimen' }] } });
  });

  it('are shown in oxides step by step, and stay as reported', async () => {
    const reported = [
      { analyte: 'Si', value: 20 },
      { analyte: 'PbO', value: 50 },
      { analyte: 'FeO', value: 5 },
    ];
    const { body } = await used.api.post(path, wish(reported));
    const shown = await used.api.post(`${path}/${body.id}/normalisation`, { iron: 'Fe2O3' });
    // Si → SiO2 × 2.1393 and FeO → Fe2O3 × 1.1113, from IUPAC 2021 weights (doi 10.1515/pac-2019-0603).
    expect(shown.body.amounts.SiO2.value).toBeCloseTo(20 * 2.13933, 3);
    expect(shown.body.amounts.Fe2O3.value).toBeCloseTo(5 * 1.1113, 3);
    expect(shown.body.rawTotal).toBeCloseTo(20 * 2.13933 + 50 + 5 * 1.1113, 3);
    expect(shown.body.steps.length).toBeGreaterThan(3);
    const after = await used.api.get(`${path}/${body.id}`);
    expect(after.body.reported.map((one: { analyte: string }) => one.analyte)).toEqual(['Si', 'PbO', 'FeO']);
  });

  it('keep what was entered first beside every correction', async () => {
    const first = [
      { analyte: 'SiO2', value: 52.1 },
      { analyte: 'PbO', value: 30 },
    ];
    const { body } = await used.api.post(path, wish(first));
    const one = `${path}/${body.id}`;
    expect(body.firstReported).toBeNull();
    const noted = await used.api.patch(one, { note: 'again', reported: body.reported });
    expect(noted.body).toMatchObject({ note: 'again', firstReported: null });
    for (const value of [62.1, 62.2]) {
      const change = { reported: [{ analyte: 'SiO2', value }, first[1]] };
      const { body: corrected } = await used.api.patch(one, change);
      expect(corrected.reported[0].value).toBe(value);
      expect(corrected.firstReported).toEqual(body.reported);
    }
  });
  it('are corrected and deleted', async () => {
    const { body } = await used.api.post(path, wish([{ analyte: 'PbO', value: 50 }]));
    const changed = await used.api.patch(`${path}/${body.id}`, {
      measured: 'slip',
      reported: [{ analyte: 'PbO', value: 5 }],
    });
    expect(changed.body).toMatchObject({ measured: 'slip', reported: [{ value: 5 }] });
    expect((await used.api.get(`${path}?measured=slip`)).body.total).toBe(1);
    expect((await used.api.delete(`${path}/${body.id}`)).status).toBe(204);
    expect((await used.api.get(`${path}/${body.id}`)).status).toBe(404);
  });
});

describe('an analysis of a tile', () => {
  it('may name its zone; it outlives the zone, and keeps it when zones are put anew', async () => {
    const study = path.replace('/analyses', '');
    const tile = (await used.api.post(`${study}/tiles`, { label: 'T1', rows: 1, columns: 2 })).body;
    const [first, second] = tile.zones;
    const reported = [{ analyte: 'PbO', value: 40 }];
    const made = await used.api.post(path, wish(reported, { specimen: tile.id, zone: second.id }));
    expect(made).toMatchObject({ status: 201, body: { zone: second.id, zoneLabel: 'B1' } });
    const zones = ['A1', 'B1'].map((label, i) => ({ label, row: 1, column: i + 1, coats: 2 }));
    await used.api.patch(`${study}/tiles/${tile.id}`, { zones });
    const one = `${path}/${made.body.id}`;
    expect((await used.api.get(one)).body.zoneLabel).toBe('B1');
    expect((await used.api.patch(one, { zone: first.id })).body).toMatchObject({ zoneLabel: 'A1' });
    expect((await used.api.get(`${path}?specimen=${tile.id}`)).body.rows[0].zone).toBe(first.id);
    const zoned = async () => (await used.api.get(`${path}?zone=any`)).body.rows;
    expect(await zoned()).toMatchObject([{ id: made.body.id }]);
    await used.api.delete(`${study}/tiles/${tile.id}/zones/${first.id}`);
    expect(await zoned()).toEqual([]);
    expect((await used.api.get(one)).body).toMatchObject({ zone: null, zoneLabel: null });
  });
  it('must name a zone of its own tile', async () => {
    const study = path.replace('/analyses', '');
    const tile = (await used.api.post(`${study}/tiles`, { label: 'T2', rows: 1, columns: 1 })).body;
    const reported = [{ analyte: 'PbO', value: 40 }];
    const refused = await used.api.post(path, wish(reported, { zone: tile.zones[0].id }));
    expect(refused).toMatchObject({ status: 422, body: { faults: [{ at: 'zone' }] } });
    expect(refused.body.detail).toContain('one of the specimen that was measured');
    const own = (await used.api.post(path, wish(reported))).body;
    expect((await used.api.patch(`${path}/${own.id}`, { zone: tile.zones[0].id })).status).toBe(422);
  });
});
