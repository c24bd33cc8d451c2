import PDFDocument from 'pdfkit';
import { beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../api/app.ts';
import type { Comparison } from '../../api/contract/placement.ts';
import { FORMATS } from '../../api/export/formats.ts';
import { readPdf, readPng, readSvg } from '../support/read-files.ts';
import { startApi } from '../support/start-api.ts';

/** Files are read back by pdf.js, pngjs and saxes, none of which had a part in writing them. */
const used = startApi();
let at: string;
let kept: string;
let result: Comparison;
const FIGURES = ['scores', 'loadings', 'profile', 'pair', 'ternary', 'dendrogram', 'heatmap'] as const;
const FORMAT_NAMES = Object.keys(FORMATS) as (keyof typeof FORMATS)[];

beforeAll(async () => {
  const study = (await used.api.post('/api/demo')).body.id;
  at = `/api/studies/${study}`;
  const groups = (await used.api.get(`${at}/groups`)).body.map(({ id }: { id: string }) => id);
  const wish = { name: 'For the talk', comparison: { settings: { groups } } };
  const made = await used.api.post(`${at}/placements`, wish);
  expect(made.status).toBe(201);
  kept = `${at}/placements/${made.body.id}`;
  result = made.body.result;
});

async function file(path: string) {
  const answer = await createApp({ db: used.database.db }).request(`http://localhost${path}`);
  expect(answer.status).toBe(200);
  return { bytes: new Uint8Array(await answer.arrayBuffer()), type: answer.headers.get('content-type') };
}

describe('a figure as PDF', () => {
  it('is read by one who sees when a font is only named', async () => {
    const document = new PDFDocument();
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    const ended = new Promise((resolve) => document.on('end', resolve));
    document.font('Helvetica').text('Only named').end();
    await ended;
    const { fonts } = await readPdf(Buffer.concat(chunks));
    expect(fonts.map(({ embedded }) => embedded)).toEqual([false]);
  });

  it.each(FIGURES)('%s is one page of vectors with its fonts in it and its text as text', async (figure) => {
    const { bytes, type } = await file(`${kept}/figures/${figure}.pdf?format=slide-16-9`);
    expect(type).toBe('application/pdf');
    const pdf = await readPdf(bytes);
    expect(pdf.pages).toBe(1);
    expect(pdf.pictures).toBe(0);
    expect(pdf.paths).toBeGreaterThan(15);
    expect(pdf.fonts.length).toBeGreaterThan(0);
    expect(pdf.fonts.every(({ name, embedded }) => embedded && /SourceSans3/.test(name))).toBe(true);
  });
  it.each(FORMAT_NAMES)('%s has the size its format says, in mm', async (format) => {
    const { bytes } = await file(`${kept}/figures/scores.pdf?format=${format}`);
    const { width, height } = await readPdf(bytes);
    const [across, up] = FORMATS[format].millimetres;
    expect((width * 25.4) / 72).toBeCloseTo(across, 1);
    expect((height * 25.4) / 72).toBeCloseTo(up, 1);
  });
  it('says the names of groups and replicas, the axes and what the caption says', async () => {
    const pdf = await readPdf((await file(`${kept}/figures/scores.pdf`)).bytes);
    for (const { name, n } of result.model.groups) expect(pdf.text).toContain(`${name} (${n})`);
    expect(pdf.text).toContain(result.placements[0]!.label);
    expect(pdf.text).toContain('% of the variance');
    const { captions } = (await used.api.get(`${kept}/text`)).body;
    expect(captions.scores.startsWith(pdf.about.Subject!)).toBe(true);
  });
  it('shows formulas with low figures that can be copied', async () => {
    const { text } = await readPdf((await file(`${kept}/figures/profile.pdf`)).bytes);
    expect(text).toContain('SiO₂');
  });
});

describe('a figure as PNG', () => {
  it.each([
    ['slide-16-9', 3840, 2160],
    ['slide-4-3', 1024, 768],
  ] as const)('%s is %d px wide and %d high, to a pixel', async (format, width, height) => {
    const { bytes } = await file(`${kept}/figures/scores.png?format=${format}&width=${width}`);
    const png = readPng(bytes);
    expect(png.width).toBe(width);
    expect(Math.abs(png.height - height)).toBeLessThanOrEqual(1);
    expect(png.colours).toBeGreaterThan(50);
  });
  it('wider than 4K is refused with the reason', async () => {
    const { status, body } = await used.api.get(`${kept}/figures/scores.png?width=3841`);
    expect(status).toBe(422);
    expect(JSON.stringify(body)).toContain('3840');
  });
});

describe('a figure as SVG', () => {
  it.each(FIGURES)('%s is well-formed in every format', async (figure) => {
    for (const format of FORMAT_NAMES) {
      const { text, headers } = await used.api.get(`${kept}/figures/${figure}.svg?format=${format}`);
      expect(headers.get('content-type')).toContain('image/svg+xml');
      const counts = readSvg(text);
      expect(counts.get('svg')).toBe(1);
      expect(counts.get('text')).toBeGreaterThan(5);
      expect(counts.has('script')).toBe(false);
    }
  });
  it('has no type smaller than its theme asks for', async () => {
    const smallest = { slide: 18, print: 7.5, 'page-light': 12, 'page-dark': 12 } as const;
    for (const format of FORMAT_NAMES)
      for (const figure of FIGURES) {
        const { text } = await used.api.get(`${kept}/figures/${figure}.svg?format=${format}`);
        const sizes = [...text.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
        expect(Math.min(...sizes)).toBeGreaterThanOrEqual(smallest[FORMATS[format].theme]);
      }
  });
  it('is the same drawing kept and not kept', async () => {
    const first = await used.api.get(`${kept}/figures/scores.svg?loadings=true&across=2&up=1`);
    const look = { loadings: true, across: 2, up: 1 };
    const order = { comparison: result.request, look };
    const again = await used.api.post(`${at}/comparison/figures/scores.svg`, order);
    expect(again.status).toBe(200);
    expect(again.text).toBe(first.text);
  });
  it('follows the look that is asked for', async () => {
    const plain = await used.api.get(`${kept}/figures/scores.svg?ellipses=false&naming=nothing`);
    expect(plain.text).not.toContain('<ellipse');
    const zoomed = await used.api.get(`${kept}/figures/scores.svg?view=-0.1,0.1,-0.1,0.1`);
    expect(zoomed.text).not.toBe((await used.api.get(`${kept}/figures/scores.svg`)).text);
  });
  it.each([
    ['scores.svg?across=40', 'principal components'],
    ['scores.svg?view=1,0,0,1', 'from less to more'],
    ['profile.svg?replica=00000000-0000-4000-8000-000000000000', 'not among them'],
    ['profile.svg?against=00000000-0000-4000-8000-000000000000', 'not among them'],
    ['pair.svg?oxides=SiO2', '2 different oxides'],
    ['pair.svg?oxides=SiO2,SiO2', '2 different oxides'],
    ['ternary.svg?oxides=SiO2,PbO,Nb2O5', 'Nb2O5 is not one'],
    ['scores.gif', 'file'],
    ['scores.svg?format=poster', 'format'],
  ])('%s is refused with the reason', async (path, reason) => {
    const { status, text } = await used.api.get(`${kept}/figures/${path}`);
    expect(status).toBe(422);
    expect(text).toContain(reason);
  });
});

describe('the words beside the figures', () => {
  it('give n of every group, the oxides, the method and where the sherds are from', async () => {
    const { body } = await used.api.get(`${kept}/text?loadings=true`);
    for (const { name, n } of result.model.groups) {
      expect(body.captions.scores).toContain(`${name}, n = ${n}`);
      expect(body.methods).toContain(`${name}, n = ${n}`);
    }
    expect(body.methods).toContain(`on ${result.model.parts.length} oxides`);
    expect(body.methods).toMatch(/Computed with Nearsherd \d+\.\d+\.\d+\.$/);
    expect(body.references.map(({ doi }: { doi: string }) => doi)).toContain('10.1007/978-94-009-4109-0');
    const ofGroups = body.sources.filter(({ kind }: { kind: string }) => kind === 'ware group');
    expect(ofGroups.map(({ n }: { n: number }) => n)).toEqual(
      result.groups.map(({ specimens }) => specimens),
    );
    const analyses = body.sources.filter(({ kind }: { kind: string }) => kind === 'analyses');
    expect(analyses.length).toBeGreaterThan(0);
  });
  it('are the same for a comparison that is not kept', async () => {
    const { body } = await used.api.post(`${at}/comparison/text`, { comparison: result.request });
    expect(body).toEqual((await used.api.get(`${kept}/text`)).body);
  });
  it('stay as they were when the study changes', async () => {
    const before = (await used.api.get(`${kept}/text`)).body;
    const group = result.groups[0]!.id;
    await used.api.patch(`${at}/groups/${group}`, { source: 'Another paper' });
    expect((await used.api.get(`${kept}/text`)).body).toEqual(before);
  });
});
