import { beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../api/app.ts';
import { FORMATS } from '../../api/export/formats.ts';
import { readPdf, readPng, readSvg } from '../support/read-files.ts';
import { startApi } from '../support/start-api.ts';

/** Figures beyond those of a comparison, read back by pdf.js, pngjs and saxes, which had no part in writing them. */
const used = startApi();
let at: string;
let ofTrial: object;

beforeAll(async () => {
  const study = (await used.api.post('/api/demo')).body.id;
  at = `/api/studies/${study}`;
  const found: { factor: { name: string }; values: unknown[] }[] = (
    await used.api.get(`${at}/trials/factors`)
  ).body;
  const names = ['coats', 'PbO as weighed (wt%)'];
  ofTrial = { factors: found.map(({ factor }) => factor).filter(({ name }) => names.includes(name)) };
});

/** A file, drawn from what lies in the study or from what is sent along. */
async function file(path: string, order?: object) {
  const sent =
    order === undefined
      ? {}
      : { method: 'POST', body: JSON.stringify(order), headers: { 'content-type': 'application/json' } };
  const answer = await createApp({ db: used.database.db }).request(`http://localhost${path}`, sent);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  expect(answer.status, new TextDecoder().decode(bytes)).toBe(200);
  return { bytes, text: new TextDecoder().decode(bytes), type: answer.headers.get('content-type') };
}
const sheet = (format: keyof typeof FORMATS, width = 1920) => ({ sheet: { format, width } });

async function expectDrawing(bytes: Uint8Array, words: readonly string[]) {
  const pdf = await readPdf(bytes);
  expect(pdf.pages).toBe(1);
  expect(pdf.pictures).toBe(0);
  expect(pdf.paths).toBeGreaterThan(5);
  expect(pdf.fonts.length).toBeGreaterThan(0);
  expect(pdf.fonts.every(({ name, embedded }) => embedded && /SourceSans3/.test(name))).toBe(true);
  for (const word of words) expect(pdf.text).toContain(word);
  return pdf;
}

const SMALLEST = { slide: 18, print: 7.5, 'page-light': 12, 'page-dark': 12 } as const;
function expectReadable(svg: string, format: keyof typeof FORMATS) {
  expect(readSvg(svg).get('text')).toBeGreaterThan(5);
  const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(SMALLEST[FORMATS[format].theme]);
}

describe('figures of what mattered', () => {
  it.each([
    ['zones', ['Tile 1', 'satin', 'glossy']],
    ['effects', ['coats', 'per coat', 'no effect']],
    ['chance', ['Chance of a glossy zone', 'interval']],
  ] as const)('%s is one page of vectors with its fonts in it and its text as text', async (name, words) => {
    const { bytes, type } = await file(`${at}/trials/figures/${name}.pdf`, ofTrial);
    expect(type).toBe('application/pdf');
    const pdf = await expectDrawing(bytes, words);
    expect(pdf.about.Subject).toMatch(/zones of \d+ tiles/);
  });
  it.each(['zones', 'effects', 'chance'])(
    '%s is a well-formed SVG in every format, no type too small',
    async (name) => {
      for (const format of Object.keys(FORMATS) as (keyof typeof FORMATS)[]) {
        const order = { ...ofTrial, ...sheet(format) };
        const { text, type } = await file(`${at}/trials/figures/${name}.svg`, order);
        expect(type).toContain('image/svg+xml');
        expectReadable(text, format);
      }
    },
  );
  it('zones are a PNG of 3840 pixels', async () => {
    const order = { ...ofTrial, ...sheet('slide-16-9', 3840) };
    const png = readPng((await file(`${at}/trials/figures/zones.png`, order)).bytes);
    expect([png.width, png.height]).toEqual([3840, 2160]);
    expect(png.colours).toBeGreaterThan(20);
  });
  it('have captions with n and method, a methods paragraph and its citations', async () => {
    const { status, body } = await used.api.post(`${at}/trials/text`, ofTrial);
    expect(status).toBe(200);
    expect(body.captions.effects).toMatch(/from 54 zones of 9 tiles and 2 firings/);
    expect(body.captions.zones).toContain('fired in Firing 1 (invented) and Firing 2 (invented)');
    expect(body.captions.chance).toContain('Firth');
    expect(body.methods).toMatch(/54 zones of 9 tiles from 2 firings.*Computed with Nearsherd/);
    const cited = body.references.map(({ doi }: { doi: string }) => doi);
    expect(cited.length).toBeGreaterThan(0);
    expect(new Set(cited).size).toBe(cited.length);
  });
  it('say why where one of them cannot be drawn', async () => {
    const order = { ...ofTrial, outcome: 'share' };
    const { body } = await used.api.post(`${at}/trials/text`, order);
    expect(body.captions.chance).toMatch(/^No such figure: /);
    const refused = await used.api.post(`${at}/trials/figures/chance.svg`, order);
    expect(refused.status).toBe(422);
  });
  it.each([
    ['zones.gif', {}, 'file'],
    ['zones.svg', { sheet: { format: 'poster' } }, 'format'],
    ['zones.png', { sheet: { width: 3841 } }, '3840'],
    ['zones.svg', { tiles: [] }, 'tiles chosen have none'],
    ['effects.svg', { factors: [] }, 'at least one factor'],
    ['chance.svg', { against: 'moonlight' }, 'moonlight'],
  ])('%s with %j is refused with the reason', async (name, change, reason) => {
    const { status, text } = await used.api.post(`${at}/trials/figures/${name}`, { ...ofTrial, ...change });
    expect(status).toBe(422);
    expect(text).toContain(reason);
  });
});

describe('the curve of a firing', () => {
  const curveAt = async (pick: (firing: { log: unknown }) => boolean) => {
    const all: { id: string; name: string; log: unknown }[] = (await used.api.get(`${at}/firings`)).body;
    return `${at}/firings/${all.find(pick)!.id}`;
  };
  it('is one page of vectors with its fonts in it and its text as text', async () => {
    const path = await curveAt(({ log }) => log !== null);
    const { bytes } = await file(`${path}/figures/curve.pdf?format=column-double`);
    const pdf = await expectDrawing(bytes, ['°C', 'since the fire was lit']);
    expect((pdf.width * 25.4) / 72).toBeCloseTo(FORMATS['column-double'].millimetres[0], 1);
  });
  it('is a well-formed SVG in every format, no type too small', async () => {
    const path = await curveAt(({ log }) => log !== null);
    for (const format of Object.keys(FORMATS) as (keyof typeof FORMATS)[])
      expectReadable((await file(`${path}/figures/curve.svg?format=${format}`)).text, format);
  });
  it('is a PNG of 3840 pixels', async () => {
    const path = await curveAt(() => true);
    const png = readPng((await file(`${path}/figures/curve.png?width=3840`)).bytes);
    expect([png.width, png.height]).toEqual([3840, 2160]);
  });
  it('has a caption with n, sensors, errors and what was thinned, and names the standard', async () => {
    const { body } = await used.api.get(`${await curveAt(({ log }) => log !== null)}/text`);
    expect(body.captions.curve).toMatch(/from a log of [\d,]+ readings in \d+ channels?/);
    expect(body.captions.curve).toMatch(/peak \d+ °C \(\d+ to \d+ °C\); type K, class \d \(IEC 60584-1\)/);
    expect(body.methods).toContain('(IEC 60584-1)');
    expect(body.references.map(({ text }: { text: string }) => text)).toEqual([
      expect.stringContaining('IEC 60584-1:2013'),
    ]);
  });
  it('is refused where there is nothing to draw', async () => {
    const made = await used.api.post(`${at}/firings`, { name: 'Unlit' });
    const { status, text } = await used.api.get(`${at}/firings/${made.body.id}/figures/curve.svg`);
    expect(status).toBe(422);
    expect(text).toContain('readings with a time; this firing has none');
    const { body } = await used.api.get(`${at}/firings/${made.body.id}/text`);
    expect(body.captions.curve).toMatch(/^No such figure/);
  });
});

describe('a batch beside the tiles made of it', () => {
  const batchAt = async (name: string) => {
    const all: { id: string; name: string; specimens: string[] }[] = (await used.api.get(`${at}/batches`))
      .body;
    const found = all.find((one) => one.name.startsWith(name))!;
    return { path: `${at}/batches/${found.id}`, ...found };
  };
  it('is one page of vectors with its fonts in it and its text as text', async () => {
    const { path } = await batchAt('Batch C');
    const { bytes } = await file(`${path}/figures/fired.pdf`);
    await expectDrawing(bytes, ['PbO', 'SiO₂', 'Predicted', 'Tile 3', 'Tile 4', 'Tile 5', 'wt%']);
  });
  it('is a well-formed SVG in every format, no type too small', async () => {
    const { path } = await batchAt('Batch D');
    for (const format of Object.keys(FORMATS) as (keyof typeof FORMATS)[])
      expectReadable((await file(`${path}/figures/fired.svg?format=${format}`)).text, format);
  });
  it('is a PNG of 3840 pixels', async () => {
    const { path } = await batchAt('Batch A');
    const png = readPng((await file(`${path}/figures/fired.png?width=3840`)).bytes);
    expect([png.width, png.height]).toEqual([3840, 2160]);
  });
  it('has a caption with n, closure and what bars mean, and methods that name the atomic weights', async () => {
    const { path } = await batchAt('Batch C');
    const { body } = await used.api.get(`${path}/text`);
    expect(body.captions.fired).toMatch(/after 850 °C, beside the paint of Tile 3 \(n = 2 spots\)/);
    expect(body.captions.fired).toMatch(/closed to 100 on \d+ oxides/);
    expect(body.methods).toContain('The paint of 3 tiles');
    expect(body.references.map(({ doi }: { doi: string }) => doi)).toEqual(['10.1515/pac-2019-0603']);
  });
  it('is drawn beside another replica where one is named, and refused beside nothing', async () => {
    const { path } = await batchAt('Batch A');
    const { specimens } = await batchAt('Batch B');
    const other = await used.api.get(`${path}/text?replica=${specimens[0]}`);
    expect(other.body.captions.fired).toContain('the paint of Tile 2');
    const nobody = '00000000-0000-4000-8000-000000000000';
    const { status, text } = await used.api.get(`${path}/figures/fired.svg?replica=${nobody}`);
    expect(status).toBe(422);
    expect(text).toContain('this batch has neither');
  });
});

describe('the line that a paint and its slip lie on', () => {
  const orderOf = async (label: string, f = 0.2) => {
    const { rows } = (await used.api.get(`${at}/specimens?kind=replica&limit=500`)).body;
    const { id } = rows.find((one: { label: string }) => one.label === label);
    return { choice: { specimen: id, source: { kind: 'own' }, f } };
  };
  it('is one page of vectors with its fonts in it and its text as text', async () => {
    const order = { ...(await orderOf('Tile 3', 0.1)), oxides: ['PbO', 'Al2O3'] };
    const { bytes } = await file(`${at}/slip/figures/line.pdf`, order);
    await expectDrawing(bytes, [
      'PbO, wt%',
      'Al₂O₃, wt%',
      'slip of Tile 3',
      '10.0 % slip drawn off',
      'other tiles',
    ]);
  });
  it('is a well-formed SVG in every format, no type too small, and a PNG of 3840 pixels', async () => {
    const order = await orderOf('Tile 3', 0.1);
    for (const format of Object.keys(FORMATS) as (keyof typeof FORMATS)[])
      expectReadable(
        (await file(`${at}/slip/figures/line.svg`, { ...order, ...sheet(format) })).text,
        format,
      );
    const { bytes } = await file(`${at}/slip/figures/line.png`, { ...order, ...sheet('slide-16-9', 3840) });
    expect(readPng(bytes)).toMatchObject({ width: 3840, height: 2160 });
  });
  it('has a caption with n, the share and how it is drawn off, and methods', async () => {
    const { status, body } = await used.api.post(`${at}/slip/text`, await orderOf('Tile 3', 0.1));
    expect(status).toBe(200);
    expect(body.captions.line).toMatch(
      /paint of Tile 3 \(n = \d spots?\) and of the slip of Tile 3 \(n = \d/,
    );
    expect(body.captions.line).toContain('10.0 % slip drawn off, (measured − f·slip)/(1 − f)');
    const { rows } = (await used.api.get(`${at}/specimens?kind=replica&limit=500`)).body;
    const painted = rows.filter((one: { measured: string[] }) => one.measured.includes('paint'));
    expect(body.captions.line).toContain(`with ${painted.length - 1} other tiles`);
    expect(body.methods).toContain('A share of 10 % slip was drawn off by mass');
  });
  it.each([
    [{ oxides: ['PbO', 'PbO'] }, 'two different oxides'],
    [{ oxides: ['PbO', 'Nb2O5'] }, 'Nb2O5 is not one'],
    [{ oxides: ['PbO'] }, 'two oxides'],
    [{ sheet: { format: 'poster' } }, 'format'],
  ])('with %j is refused with the reason', async (change, reason) => {
    const order = { ...(await orderOf('Tile 3')), ...change };
    const { status, text } = await used.api.post(`${at}/slip/figures/line.svg`, order);
    expect(status).toBe(422);
    expect(text).toContain(reason);
  });
});
