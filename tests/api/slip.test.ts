import { beforeAll, describe, expect, it } from 'vitest';
import type { Sample } from '../../api/domain/composition/types.ts';
import { slipFor } from '../../api/domain/slip/slip-source.ts';
import { drawPlacements, finishDraws } from '../../api/domain/uncertainty/draw-placements.ts';
import { startApi } from '../support/start-api.ts';

/** A paint and a slip that are told apart by alumina and titania, mixed by mass in known shares. */
const PAINT = { PbO: 60, SiO2: 29, MnO: 10, Fe2O3: 1, Al2O3: 0, TiO2: 0 };
const SLIP = { PbO: 0.1, SiO2: 70, MnO: 0.1, Fe2O3: 8, Al2O3: 20, TiO2: 1.8 };
const OXIDES = Object.keys(PAINT) as (keyof typeof PAINT)[];
type Row = Record<keyof typeof PAINT, number>;
const mixed = (paint: Row, f: number): Row =>
  Object.fromEntries(OXIDES.map((oxide) => [oxide, (1 - f) * paint[oxide] + f * SLIP[oxide]])) as Row;
const reported = (row: Row) =>
  OXIDES.map((analyte) => ({
    analyte,
    value: row[analyte],
    unit: 'wt%',
    uncertainty: 0.02 * row[analyte] + 0.01,
    basis: '1σ',
  }));

const used = startApi();
let study: string;
let group: string;
const ids: Record<string, string> = {};
const ask = (name: string, body: object) => used.api.post(`/api/studies/${study}/slip/${name}`, body);
const comparison = (more: object = {}) => ({ settings: { groups: [group] }, measured: 'paint', ...more });
const compare = async (more: object = {}) =>
  (await used.api.post(`/api/studies/${study}/comparison`, comparison(more))).body;
const choice = (f: number, more: object = {}) => ({
  specimen: ids.Tile,
  source: { kind: 'own' },
  f,
  ...more,
});
const own = (measured: string) => ({ kind: 'specimen', specimen: ids.Tile, measured });

async function add(label: string, kind: string, analyses: readonly (readonly [string, Row])[]) {
  const made = await used.api.post(`/api/studies/${study}/specimens`, {
    label,
    kind,
    group: kind === 'sherd' ? group : null,
  });
  expect(made.status).toBe(201);
  ids[label] = made.body.id;
  for (const [measured, row] of analyses) {
    const analysis = { specimen: made.body.id, measured, technique: 'EPMA', reported: reported(row) };
    expect((await used.api.post(`/api/studies/${study}/analyses`, analysis)).status).toBe(201);
  }
}

beforeAll(async () => {
  study = await used.api.newStudy();
  group = (await used.api.post(`/api/studies/${study}/groups`, { name: 'Red' })).body.id;
  for (let i = 0; i < 8; i++) {
    const recipe = { ...PAINT, PbO: 60 + 0.4 * (i % 3), SiO2: 29 - 0.4 * (i % 3) };
    const slips = i < 3 ? [['slip', SLIP] as const] : [];
    await add(`R-${i}`, 'sherd', [['paint', mixed(recipe, 0.05 + 0.04 * i)], ...slips]);
  }
  await add('Tile', 'replica', [
    ['paint', mixed(PAINT, 0.25)],
    ['slip', SLIP],
    ['body', { ...SLIP, SiO2: 64, Fe2O3: 14 }],
  ]);
  await add('Bare', 'replica', [['paint', mixed(PAINT, 0.1)]]);
});

describe('slip and body analyses', () => {
  it('come one sample a specimen and thing measured, closed to 100', async () => {
    const { body } = await ask('samples', {});
    const found = body.samples.map((one: Sample) => `${one.label} ${one.measured}`);
    expect(found.toSorted()).toEqual(['R-0 slip', 'R-1 slip', 'R-2 slip', 'Tile body', 'Tile slip']);
    expect(body.samples[0].amounts.SiO2.value).toBeCloseTo(70, 6);
  });
});

describe('drawing slip off', () => {
  it('gives the paint back that was mixed, with the oxide that sets the bound', async () => {
    const { status, body } = await ask('draw-off', { comparison: comparison(), choice: choice(0.25) });
    expect(status).toBe(200);
    const { parts } = await compare().then(({ model }) => model);
    const at = (oxide: string) => body.placement.parts[parts.indexOf(oxide)];
    expect(at('PbO') / at('SiO2')).toBeCloseTo(60 / 29, 6);
    expect(at('MnO') / at('Fe2O3')).toBeCloseTo(10, 6);
    expect(body.drawn.spent.toSorted()).toEqual(['Al2O3', 'TiO2']);
    expect(body.limit.strict).toBeCloseTo(0.25, 6);
    expect(['Al2O3', 'TiO2']).toContain(body.limit.oxide);
    expect(body.limit.f).toBeGreaterThan(0.25);
    expect(body.path.at(0).f).toBe(0);
    expect(body.path.at(-1).f).toBeCloseTo(body.limit.f, 6);
  });

  it('says for both sides whether slip is in or out, and that unlike sides are not alike', async () => {
    const { body } = await ask('draw-off', {
      comparison: comparison(),
      choice: choice(0.25, { from: 'tracers' }),
    });
    expect(body.likeWithLike).toEqual({
      alike: false,
      sentence:
        'Tile: slip drawn off (f = 0.25, from tracers); the references: slip in. These are not alike: distances and probabilities mix paint with slip in it and paint without.',
    });
  });

  it('is the same number in a comparison that names the slip, and in one that is kept', async () => {
    const alone = (await ask('draw-off', { comparison: comparison(), choice: choice(0.2) })).body.placement;
    const asked = comparison({ slip: [choice(0.2, { from: 'a value set by hand' })] });
    const within = await compare({ slip: [choice(0.2)] });
    expect(within.placements.find((one: { label: string }) => one.label === 'Tile')).toEqual(alone);
    expect(within.slip).toMatchObject([{ label: 'Tile', role: 'replica', f: 0.2, slip: 'slip of Tile' }]);
    const kept = await used.api.post(`/api/studies/${study}/placements`, { name: 'Out', comparison: asked });
    const read = await used.api.get(`/api/studies/${study}/placements/${kept.body.id}`);
    expect(read.body.result.request.slip).toMatchObject([{ f: 0.2, source: { kind: 'own' } }]);
    expect(read.body.result.placements).toEqual(within.placements);
  });

  it('draws it off references too, and then like is compared with like', async () => {
    const slip = Array.from({ length: 8 }, (_, i) => ({
      specimen: ids[`R-${i}`],
      source: { kind: 'group', group },
      f: 0.04 + 0.04 * i,
      from: 'thickness',
    }));
    const drawn = await compare({ slip });
    expect(drawn.slip.map((one: { label: string }) => one.label)).toHaveLength(8);
    expect(drawn.slip[0].slip).toBe('mean slip of Red (n = 3)');
    const { body } = await ask('draw-off', {
      comparison: comparison({ slip }),
      choice: choice(0.24, { from: 'thickness' }),
    });
    expect(body.likeWithLike.alike).toBe(true);
  });

  it('is refused beyond what an oxide allows, and without a slip, in plain words', async () => {
    const far = await ask('draw-off', { comparison: comparison(), choice: choice(0.6) });
    expect(far).toMatchObject({
      status: 422,
      body: { detail: expect.stringMatching(/at f = 0.6 (Al2O3|TiO2|SiO2) comes to/) },
    });
    const bare = await ask('draw-off', {
      comparison: comparison(),
      choice: { ...choice(0.1), specimen: ids.Bare },
    });
    expect(bare.headers.get('content-type')).toContain('application/problem+json');
    expect(bare.body.detail).toContain('Bare has none of its own');
    const listed = await compare({ slip: [{ ...choice(0.1), specimen: ids.Bare }] });
    expect(listed.excluded).toContainEqual(
      expect.objectContaining({ label: 'Bare', reason: expect.stringContaining('none of its own') }),
    );
  });
});

describe('how much slip', () => {
  const holds = ({ low, high }: { low: number; high: number }) => low < 0.25 && high > 0.25;

  it('is told by tracers, which agree', async () => {
    const wish = { by: 'tracers', specimen: ids.Tile, tracers: ['TiO2', 'Al2O3'] };
    const { estimate } = (await ask('estimate', wish)).body;
    expect(estimate.f).toBeCloseTo(0.25, 6);
    expect(holds(estimate)).toBe(true);
    expect(estimate.consistency.agree).toBe(true);
    expect(estimate.assumptions[0]).toContain('holds no TiO2');
  });

  it('is told by a batch whose fired composition is typed in', async () => {
    const target = {
      kind: 'typed',
      label: 'batch B',
      oxides: { PbO: 120, SiO2: 58, MnO: 20, Fe2O3: 2, Al2O3: 0, TiO2: 0 },
    };
    const { estimate } = (await ask('estimate', { by: 'batch', specimen: ids.Tile, target })).body;
    expect(estimate.f).toBeCloseTo(0.25, 4);
    expect(holds(estimate)).toBe(true);
    expect(estimate.direction.condition).toBeGreaterThan(1);
  });

  it('is told by a group’s own line, for its sherds and for the tile', async () => {
    const wish = { by: 'group', group, known: { Al2O3: 0, TiO2: 0 }, specimen: ids.Tile };
    const { estimate, line } = (await ask('estimate', wish)).body;
    expect(line.estimates).toHaveLength(8);
    expect(line.estimates[3].estimate.f).toBeCloseTo(0.17, 2);
    expect(holds(estimate)).toBe(true);
    expect(estimate.assumptions.join(' ')).toContain('must not be used to test membership');
  });

  it('cannot be told where slip and batch lie in the same direction, with the condition that shows it', async () => {
    const target = { kind: 'typed', label: 'slip again', oxides: { ...SLIP, SiO2: 70.01 } };
    const { estimate } = (await ask('estimate', { by: 'batch', specimen: ids.Tile, target })).body;
    expect(estimate.cannotTell ?? estimate.warnings.join(' ')).toMatch(/angle between .*condition number/);
  });

  it('is refused where a tracer was not measured', async () => {
    const { status, body } = await ask('estimate', {
      by: 'tracers',
      specimen: ids.Tile,
      tracers: ['K2O'],
    });
    expect(status).toBe(422);
    expect(body.detail).toContain('K2O');
  });
});

describe('draws', () => {
  it('give what the domain gives for the same seed', async () => {
    const { body } = await ask('uncertainty', {
      comparison: comparison(),
      specimen: ids.Tile,
      choice: choice(0.2, { sigma: 0.02 }),
      settings: { draws: 500, seed: 7 },
    });
    const { model, replicas } = await compare();
    const { samples } = (await ask('samples', { measured: ['slip'] })).body;
    const sample = replicas.find((one: Sample) => one.label === 'Tile');
    const same = finishDraws(
      drawPlacements(model, {
        sample,
        slip: {
          analysed: slipFor({ kind: 'own' }, sample, { slips: samples, names: {} }),
          fraction: { f: 0.2, sigma: 0.02, df: null, from: 'a value set by hand' },
        },
        settings: { draws: 500, seed: 7, assumedRelative: null, unmeasured: 'refuse' },
      }),
    );
    expect(body).toEqual(JSON.parse(JSON.stringify(same)));
    expect(body.sentence).toContain('% of 500 draws');
  });

  it('are at most ten thousand', async () => {
    const settings = { draws: 10_001 };
    const { status, body } = await ask('uncertainty', {
      comparison: comparison(),
      specimen: ids.Tile,
      settings,
    });
    expect(status).toBe(422);
    expect(JSON.stringify(body.faults)).toContain('at most 10000 draws');
  });
});

describe('the layer and what is beneath', () => {
  it('recasts a glaze of lead and added silica as the published sum does', async () => {
    // sources.md §4, check B: added silica leaves all other oxides at 0.667 of the body's.
    const typed = (label: string, oxides: object) => ({ kind: 'typed', label, oxides, relativeError: 0.02 });
    const { body } = await ask('recast', {
      paint: typed('glaze', { PbO: 55, SiO2: 33.6, Al2O3: 6, Fe2O3: 5.4 }),
      clays: [typed('body', { SiO2: 62, Al2O3: 20, Fe2O3: 18 }), typed('one oxide', { SiO2: 100 })],
    });
    expect(body.clays[0].verdict.kind).toBe('added silica');
    expect(body.clays[0].rows.map((row: { ratio: number }) => row.ratio.toFixed(3))).toEqual([
      '1.204',
      '0.667',
      '0.667',
    ]);
    expect(body.clays[1]).toMatchObject({
      verdict: null,
      refusal: expect.stringContaining('at least two oxides'),
    });
  });

  it('reads iron through ten micrometres as the published sum does, and silica not', async () => {
    // sources.md §5: transmission 0.1490 of Fe Kα through 10 µm, depth of 99 % 24.2 µm.
    const { body } = await ask('depth', {
      paint: { kind: 'typed', oxides: { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 } },
      slip: { kind: 'typed', oxides: { PbO: 0, SiO2: 60, Al2O3: 30, Fe2O3: 10 } },
      thickness: 10,
      density: 4.5,
      incoming: 20,
      electrons: 20,
    });
    const of = (rows: readonly { oxide: string }[], oxide: string) => rows.find((row) => row.oxide === oxide);
    expect(of(body.depths, 'Fe2O3')).toMatchObject({ depth99: expect.closeTo(24.2, 1) });
    expect(of(body.readings, 'Fe2O3')).toMatchObject({
      transmission: expect.closeTo(0.149, 3),
      reads: 'mostly slip',
    });
    expect(of(body.readings, 'SiO2')).toMatchObject({ reads: 'paint' });
    expect(body.electrons.range).toBeCloseTo(3.48, 2);
    expect(body.corrected === null).toBe(body.correctionRefusal !== null);
  });

  it('refuses a beam that is not in the table, saying which are', async () => {
    const { status, body } = await ask('depth', {
      paint: own('paint'),
      thickness: 10,
      density: 4.5,
      incoming: 21,
    });
    expect(status).toBe(422);
    expect(JSON.stringify(body.faults)).toContain('17.443');
  });

  it('learns uptake from tiles and applies it', async () => {
    const tile = (thickness: number, f: number) => ({
      label: `${thickness}`,
      thickness,
      thicknessSigma: 1,
      f,
      sigma: 0.01,
    });
    const tiles = [tile(10, 0.5), tile(20, 1 / 3), tile(40, 0.2)];
    const apply = [{ specimen: ids['R-1'], label: 'R-1', thickness: 30, sigma: 2 }];
    const { body } = await ask('uptake', { tiles, apply });
    expect(body.uptake.depth).toBeCloseTo(10, 3);
    expect(body.applied[0]).toMatchObject({ label: 'R-1', estimate: { f: expect.closeTo(0.25, 4) } });
    const few = await ask('uptake', { tiles: tiles.slice(1) });
    expect(few).toMatchObject({
      status: 422,
      body: { detail: expect.stringContaining('at least three tiles') },
    });
  });
});
