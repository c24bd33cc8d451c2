import { beforeEach, describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
beforeEach(async () => {
  study = `/api/studies/${await used.api.newStudy()}`;
});
const post = (path: string, body: unknown) => used.api.post(`${study}${path}`, body);
const get = (path: string) => used.api.get(`${study}${path}`);
const galena = { material: 'galena', amount: 100 };
const charge = { charge: [galena], massOut: 101, celsius: 800, hours: 3 };
const formula = (text: string, name = 'Ore') => ({ name, making: { kind: 'formula', formula: text } });
const mix = (over: object = {}) => ({
  name: 'Mix 1',
  lines: [
    { material: 'litharge', amount: 65 },
    { material: 'quartz', amount: 35 },
  ],
  ...over,
});

describe('materials', () => {
  it('come from a formula or from an analysis, and join the starter shelf', async () => {
    const making = { kind: 'analysis', values: { SiO2: 60, Al2O3: 25, Fe2O3: 6 }, lossOnIgnition: 9 };
    const made = await post('/materials', { name: 'Bank clay', making, pricePerKg: 2.5, onHand: 800 });
    expect(made).toMatchObject({ status: 201, body: { name: 'Bank clay', onHand: 800 } });
    const own = await post('/materials', {
      name: 'Ore',
      making: { kind: 'formula', formula: 'PbS', purity: { low: 0.8, high: 0.9 }, gangue: 'SiO2' },
    });
    const { materials } = (await get('/shelf')).body;
    const keys = materials.map((one: { key: string }) => one.key);
    expect(keys).toEqual(expect.arrayContaining(['galena', 'wood-ash', made.body.id, own.body.id]));
    expect(materials.find((one: { key: string }) => one.key === own.body.id).hazards).toEqual([
      'lead',
      'sulfur',
      'silica',
    ]);
  });

  it.each([
    [formula('PbX'), 'X'],
    [{ ...formula('PbS'), pricePerKg: -1 }, 'zero or more'],
    [{ name: 'Clay', making: { kind: 'analysis', values: { SiO2: 180 } } }, 'at most 110'],
    [{ name: 'Clay', making: { kind: 'analysis', values: { SiO2: -1 } } }, 'zero or more'],
  ])('refuse what cannot be, in plain words: %j', async (wish, words) => {
    const refused = await post('/materials', wish);
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain(words);
  });

  it('are not deleted while something is weighed from them', async () => {
    const { id } = (await post('/materials', formula('PbCO3'))).body;
    await post('/batches', mix({ lines: [{ material: id, amount: 5 }] }));
    const refused = await used.api.delete(`${study}/materials/${id}`);
    expect(refused).toMatchObject({ status: 409 });
    expect(refused.body.detail).toContain('Mix 1');
    const other = await used.api.newStudy();
    expect((await used.api.get(`/api/studies/${other}/materials/${id}`)).status).toBe(404);
  });

  it('change, and a change that cannot be leaves them as they were', async () => {
    const { id } = (await post('/materials', formula('PbCO3'))).body;
    const path = `${study}/materials/${id}`;
    expect((await used.api.patch(path, { onHand: 40 })).body.onHand).toBe(40);
    expect((await used.api.patch(path, { making: { kind: 'formula', formula: '((' } })).status).toBe(422);
    expect((await used.api.get(path)).body.making.formula).toBe('PbCO3');
  });
});

describe('batches', () => {
  it('are fired without being kept: galena to oxide by its mass factor, carbon and sulfur to gas', async () => {
    const { status, body } = await post('/batches/fired', {
      lines: [galena, { material: 'calcite', amount: 10 }],
      fire: { celsius: 1000, sulfurPerLead: { low: 0, high: 0 } },
    });
    expect(status).toBe(200);
    const of = (oxide: string) => body.fired.oxides.find((one: { oxide: string }) => one.oxide === oxide);
    // PbS 239.26 → PbO 223.199, CaCO3 100.086 → CaO 56.077 (IUPAC 2021 atomic weights).
    expect(of('PbO').grams).toBeCloseTo(93.287, 2);
    expect(of('CaO').grams).toBeCloseTo(5.603, 2);
    const { totals } = body.fired;
    const gases = Object.values<number>(totals.gases).reduce((sum, g) => sum + g, 0);
    expect(totals.fired + gases + totals.unreported).toBeCloseTo(totals.dry, 9);
    expect(body.unity.fluxes.reduce((sum: number, one: { moles: number }) => sum + one.moles, 0)).toBeCloseTo(
      1,
    );
    expect(body.advice[0].what).toBe('roast missing');
    expect(body.safety.firstRule).toContain('Local codes');
  });

  it('keep name, lines, fire, aim and the specimens made of them', async () => {
    const tile = (await post('/specimens', { label: 'T1', kind: 'replica' })).body.id;
    const made = await post(
      '/batches',
      mix({ specimens: [tile], target: { name: 'Red', parts: { PbO: 60 } } }),
    );
    expect(made).toMatchObject({ status: 201, body: { specimens: [tile], fire: { celsius: 850 } } });
    const second = await post('/batches', mix({ name: 'Mix 2', specimens: [tile] }));
    expect((await get(`/batches/${made.body.id}`)).body.specimens).toEqual([]);
    expect((await get('/batches')).body.map((one: { name: string }) => one.name)).toEqual(['Mix 1', 'Mix 2']);
    await used.api.patch(`${study}/batches/${second.body.id}`, { specimens: [] });
    expect((await get(`/batches/${second.body.id}`)).body).toMatchObject({ specimens: [], unit: 'g' });
    expect((await post('/batches', mix())).status).toBe(409);
  });

  it.each([
    [{ lines: [{ material: 'quartz', amount: -5 }] }, 'lines.0.amount: a number of zero or more is needed'],
    [{ lines: [{ material: 'gold', amount: 5 }] }, 'on the shelf; gold is not'],
    [{ lines: [{ material: 'quartz', amount: 5, water: 100 }] }, 'below 100 wt%'],
    [{ lines: [{ material: 'quartz', amount: 0 }] }, 'at least one line'],
    [{ lines: [] }, 'at least one line'],
    [{ fire: { celsius: 3000 } }, 'at most 1500'],
    [{ specimens: ['6f9b1d3e-3c0b-4c53-9a55-0d4f2f6c2f11'] }, 'must exist in this study'],
  ])('refuse %j', async (over, words) => {
    const refused = await post('/batches', mix(over));
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain(words);
  });

  it('blend into a line, each place a batch of its own', async () => {
    const one = (await post('/batches', mix())).body.id;
    const two = (
      await post('/batches', mix({ name: 'Mix 2', lines: [{ material: 'pyrolusite', amount: 3 }] }))
    ).body.id;
    const blend = { name: 'Line', batches: [one, two], steps: 4, grams: 20 };
    const made = await post('/blends', blend);
    expect(made.status).toBe(201);
    expect(made.body.map((b: { place: string }) => b.place)).toEqual(['A1', 'A2', 'A3', 'A4', 'A5']);
    const third = made.body[2].lines;
    expect(third).toEqual([
      { material: 'litharge', amount: 6.5, water: 0 },
      { material: 'quartz', amount: 3.5, water: 0 },
      { material: 'pyrolusite', amount: 10, water: 0 },
    ]);
    expect((await post('/blends', blend)).status).toBe(409);
    expect((await post('/blends', { ...blend, name: 'Other', steps: 0 })).status).toBe(422);
  });
});

describe('roasts', () => {
  it('are assessed by their weighing: a range of compounds, sulfur dioxide in grams and litres, cautions', async () => {
    const { status, body } = await post('/roasts/assess', {
      ...charge,
      looks: { lump: true, glitters: true, powder: 'yellow' },
    });
    expect(status).toBe(200);
    expect(body.change).toBeCloseTo(1);
    expect(body.judgement.verdict).toBe('not fully oxidised');
    const { grams, litres, state } = body.ranges.dioxide;
    // One mole of SO2 (64.058 g) takes 24.465 L at 25 °C and 101.325 kPa.
    expect(litres.high / grams.high).toBeCloseTo(24.465 / 64.058, 3);
    expect(state.celsius).toBe(25);
    expect(body.safety.cautions.map((one: { hazard: string }) => one.hazard)).toContain('sulfur');
  });

  it('become a material with a range, narrower with a sulfur reading, and may be roasted again', async () => {
    const first = (await post('/roasts', { ...charge, name: 'Roast 1' })).body.id;
    const again = await post('/roasts', {
      ...{ name: 'Roast 2', charge: [{ material: first, amount: 50 }], massOut: 48 },
      ...{ celsius: 820, hours: 4, sulfur: { percent: 2.5, sigma: 0.1 } },
    });
    expect(again.status).toBe(201);
    const { materials } = (await get('/shelf')).body;
    expect(materials.filter((one: { kind: string }) => one.kind === 'roast')).toHaveLength(2);
    const lines = [
      { material: first, amount: 60 },
      { material: 'quartz', amount: 40 },
    ];
    const { fired } = (await post('/batches/fired', { lines })).body;
    const lead = fired.oxides.find((one: { oxide: string }) => one.oxide === 'PbO');
    expect(lead.high).toBeGreaterThan(lead.low);
    expect((await used.api.delete(`${study}/roasts/${first}`)).status).toBe(409);
    const itself = { charge: [{ material: again.body.id, amount: 1 }], massOut: 1 };
    expect((await used.api.patch(`${study}/roasts/${first}`, itself)).status).toBe(422);
  });

  it('refuse a gain that sulfate cannot explain, and a reading that contradicts the weighing', async () => {
    const gained = await post('/roasts', { ...charge, massOut: 140, name: 'R' });
    expect(gained.status).toBe(422);
    expect(gained.body.detail).toContain('a charge cannot gain more than that');
    const read = await post('/roasts/assess', {
      ...charge,
      massOut: 94,
      sulfur: { percent: 12, sigma: 0.1 },
    });
    expect(read.body.detail).toContain('agree with the weighing');
  });
});

describe('targets', () => {
  const problem = {
    target: { parts: { PbO: 60, SiO2: 34, Al2O3: 6 } },
    materials: ['cerussite', 'quartz', 'kaolinite'],
  };
  it('are met by the non-negative batch, in both measures, in fixed and bounded parts', async () => {
    const { status, body } = await post('/targets/solve', problem);
    expect(status).toBe(200);
    expect(
      body.byDistance.lines.map((one: { amount: number }) => Math.round(one.amount * 100) / 100),
    ).toEqual([63.04, 23.63, 13.33]);
    const bounds = { cerussite: { least: 50, most: 50 } };
    const fixed = await post('/targets/solve', { ...problem, bounds });
    const lead = fixed.body.byError.lines.find((one: { material: string }) => one.material === 'cerussite');
    expect(lead.amount).toBeCloseTo(50, 6);
  });

  it('say which oxide cannot be met, and which material would bring it', async () => {
    const target = { parts: { PbO: 60, SiO2: 37, MnO: 3 } };
    const { body } = await post('/targets/solve', { ...problem, target });
    const row = body.byDistance.rows.find((one: { oxide: string }) => one.oxide === 'MnO');
    expect(row).toMatchObject({ judgement: 'too low', because: 'none of the chosen materials holds Mn' });
    expect(body.missing[0].mends).toContain('MnO');
  });

  it('refuse a target that sums to 180, and bounds that leave no batch', async () => {
    const much = await post('/targets/solve', { ...problem, target: { parts: { PbO: 120, SiO2: 60 } } });
    expect(much.status).toBe(422);
    expect(much.body.detail).toContain('found 180');
    const bounds = { cerussite: { most: 10 }, quartz: { most: 10 }, kaolinite: { most: 10 } };
    expect((await post('/targets/solve', { ...problem, bounds })).status).toBe(422);
  });
});
