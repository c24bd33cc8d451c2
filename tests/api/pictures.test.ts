import { imageSize } from 'image-size';
import { beforeEach, describe, expect, it } from 'vitest';
import { measureColour } from '../../api/domain/colour/measure.ts';
import type { Outline } from '../../api/domain/colour/types.ts';
import { invented, PLACE, phoneJpeg, pngOfSize, taggedPng, taggedWebp } from '../support/pictures.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();
const NOBODY = '6f9b1d3e-3c0b-4c53-9a55-0d4f2f6c2f11';
const BOX: Outline = [
  [0.1, 0.1],
  [0.4, 0.1],
  [0.4, 0.4],
  [0.1, 0.4],
];
let study: string;
let tile: string;
const post = (path: string, body: unknown) => used.api.post(`${study}${path}`, body);
const get = (path: string) => used.api.get(`${study}${path}`);
const patch = (path: string, body: unknown) => used.api.patch(`${study}${path}`, body);

beforeEach(async () => {
  study = `/api/studies/${await used.api.newStudy()}`;
  tile = (await post('/tiles', { label: 'Pot', rows: 0, columns: 0 })).body.id;
});

function send(bytes: Uint8Array, name: string, of: Record<string, string> = { tile }) {
  const form = new FormData();
  form.set('file', new File([bytes as Uint8Array<ArrayBuffer>], name));
  for (const [field, value] of Object.entries(of)) form.set(field, value);
  return post('/pictures', form);
}
const sendOne = async () => (await send(invented('invented.jpg'), 'a.jpg')).body.id as string;
const pixels = {
  width: 20,
  height: 20,
  data: new Uint8Array(1600).fill(90).map((byte, i) => (i % 4 === 3 ? 255 : byte)),
};
const measured = (picture: string) => ({
  ...measureColour(
    pixels,
    [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ],
    {
      outline: [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
      reflectance: 0.18,
    },
  ),
  picture,
});

describe('pictures', () => {
  it('are kept with a tile, several each, with caption and day, and leave with it', async () => {
    const made = await send(invented('invented.png'), 'a.png', { tile, caption: 'Front', taken: '2026-03' });
    expect(made).toMatchObject({
      status: 201,
      body: {
        tile,
        firing: null,
        type: 'image/png',
        width: 60,
        height: 40,
        caption: 'Front',
        taken: '2026-03',
        grey: null,
      },
    });
    await send(invented('invented.webp'), 'b.webp');
    expect((await get(`/tiles/${tile}`)).body.pictures).toMatchObject([
      { caption: 'Front' },
      { type: 'image/webp' },
    ]);
    expect((await get(`/pictures?tile=${tile}`)).body).toHaveLength(2);
    await used.api.delete(`${study}/tiles/${tile}`);
    expect((await get('/pictures')).body).toEqual([]);
  });

  it('are kept with a firing, and leave with it', async () => {
    const firing = (await post('/firings', { name: 'F1' })).body.id;
    const made = await send(invented('invented.jpg'), 'a.jpg', { firing });
    expect(made.body).toMatchObject({ firing, tile: null });
    expect((await get(`/pictures?firing=${firing}`)).body).toHaveLength(1);
    await used.api.delete(`${study}/firings/${firing}`);
    expect((await get(`/pictures/${made.body.id}`)).status).toBe(404);
  });

  it('come back byte for byte, as what they are, with no way to run as anything else', async () => {
    const { id } = (await send(invented('invented.jpg'), 'a.jpg')).body;
    const answer = await used.api.raw(`${study}/pictures/${id}/file`);
    expect([...new Uint8Array(await answer.arrayBuffer())]).toEqual([...invented('invented.jpg')]);
    expect(answer.headers.get('content-type')).toBe('image/jpeg');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('content-disposition')).toBe('inline; filename="picture.jpeg"');
  });

  it.each([
    ['a.jpg', phoneJpeg(6)],
    ['a.png', taggedPng()],
    ['a.webp', taggedWebp()],
  ])('hand no place on: %s', async (name, bytes) => {
    const { id } = (await send(bytes, name)).body;
    const kept = new Uint8Array(await (await used.api.raw(`${study}/pictures/${id}/file`)).arrayBuffer());
    const words = new TextDecoder('latin1').decode(kept);
    expect(new TextDecoder('latin1').decode(bytes)).toContain(PLACE);
    expect(words).not.toContain('GPS');
    expect(imageSize(kept)).toMatchObject({ width: 60, height: 40 });
  });

  it.each<[string, Uint8Array, string, number, string]>([
    ['a lying extension', invented('invented.jpg'), 'a.png', 422, 'needs to say what it is'],
    ['a cut-off file', invented('invented.jpg').subarray(0, 300), 'a.jpg', 422, 'breaks off after 300 bytes'],
    ['a drawing', new TextEncoder().encode('<svg/>'), 'a.svg', 422, 'JPEG, a PNG or a WebP'],
    ['a drawing called a picture', new TextEncoder().encode('<svg/>'), 'a.jpg', 422, 'JPEG, a PNG or a WebP'],
    ['48 megapixels', pngOfSize(8000, 6000), 'a.png', 422, 'at most 40 megapixels; this one has 48.0'],
    ['16 MB', new Uint8Array(16 * 1024 ** 2), 'a.jpg', 413, 'at most 15 MB; this one has 16.0 MB'],
    ['20 MB', new Uint8Array(20 * 1024 ** 2), 'a.jpg', 413, 'at most 15 MB; this one has'],
  ])('refuse %s, and nothing is changed', async (_, bytes, name, status, words) => {
    const refused = await send(bytes, name);
    expect(refused.status).toBe(status);
    expect(refused.body.detail).toContain(words);
    expect((await get('/pictures')).body).toEqual([]);
  });
  it('refuse to show nothing, two things, and what is not there', async () => {
    for (const of of [{}, { tile, firing: NOBODY }, { tile: 'x' }])
      expect((await send(invented('invented.jpg'), 'a.jpg', of as Record<string, string>)).status).toBe(422);
    for (const of of [{ tile: NOBODY }, { firing: NOBODY }])
      expect((await send(invented('invented.jpg'), 'a.jpg', of as Record<string, string>)).status).toBe(404);
  });
  it('are nobody else’s', async () => {
    const id = await sendOne();
    const other = `/api/studies/${await used.api.newStudy('Other')}`;
    for (const path of [`/pictures/${id}`, `/pictures/${id}/file`])
      expect((await used.api.get(other + path)).status).toBe(404);
    expect((await used.api.delete(`${other}/pictures/${id}`)).status).toBe(404);
    expect((await used.api.patch(`${other}/pictures/${id}`, { caption: 'x' })).status).toBe(404);
    expect((await used.api.post(`${other}/tiles`, { label: 'T' })).body.pictures).toEqual([]);
  });
  it('remember the grey patch; one whose sides cross is refused', async () => {
    const id = await sendOne();
    const grey = { outline: BOX, reflectance: 0.18 };
    expect((await patch(`/pictures/${id}`, { grey, caption: 'With card' })).body).toMatchObject({
      grey,
      caption: 'With card',
    });
    const crossed = [BOX[0], BOX[2], BOX[1], BOX[3]];
    const refused = await patch(`/pictures/${id}`, { grey: { outline: crossed, reflectance: 0.18 } });
    expect(refused.body.detail).toContain('sides that do not cross');
    expect((await patch(`/pictures/${id}`, { grey: { outline: BOX, reflectance: 18 } })).status).toBe(422);
    expect((await get(`/pictures/${id}`)).body.grey).toEqual(grey);
    expect((await patch(`/pictures/${id}`, { grey: null })).body.grey).toBeNull();
  });
});

describe('drawn zones', () => {
  it('need no grid, keep their outline, and are deleted one by one', async () => {
    const picture = await sendOne();
    const made = await post(`/tiles/${tile}/zones`, { label: 'rim', picture, outline: BOX, micrometres: 60 });
    expect(made).toMatchObject({
      status: 201,
      body: { zones: [{ label: 'rim', row: null, picture, outline: BOX }] },
    });
    expect((await post(`/tiles/${tile}/zones`, { label: 'rim', picture, outline: BOX })).status).toBe(422);
    const zone = made.body.zones[0].id;
    expect((await used.api.delete(`${study}/tiles/${tile}/zones/${zone}`)).status).toBe(204);
    expect((await used.api.delete(`${study}/tiles/${tile}/zones/${zone}`)).status).toBe(404);
    expect((await get(`/tiles/${tile}`)).body.zones).toEqual([]);
  });
  it('take part in a trial as zones of a grid do', async () => {
    const picture = await sendOne();
    for (const [label, coats, grade] of [
      ['neck', 1, 'matt'],
      ['belly', 3, 'glossy'],
    ] as const)
      await post(`/tiles/${tile}/zones`, { label, picture, outline: BOX, coats, grade });
    const factors = (await get('/trials/factors')).body;
    expect(factors).toMatchObject([{ factor: { name: 'coats' }, values: [1, 3], zones: 2, from: 'zone' }]);
  });
  it.each([
    [{ outline: null }, 'both a picture and its outline there; rim has one of them'],
    [{ outline: BOX.slice(0, 2) }, 'at least three corners'],
    [{ outline: [BOX[0], BOX[2], BOX[1], BOX[3]] }, 'sides that do not cross'],
    [{ picture: NOBODY }, 'a picture of its own tile'],
    [{ row: 1 }, 'both row and column or neither'],
    [{ row: 1, column: 1 }, 'must lie on the tile'],
  ])('refuse %j', async (over, words) => {
    const picture = await sendOne();
    const refused = await post(`/tiles/${tile}/zones`, { label: 'rim', picture, outline: BOX, ...over });
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain(words);
    expect((await get(`/tiles/${tile}`)).body.zones).toEqual([]);
  });
  it('hold a measured colour until they are drawn anew; a deleted picture leaves the colour, not the outline', async () => {
    const picture = await sendOne();
    const made = await post(`/tiles/${tile}/zones`, { label: 'rim', picture, outline: BOX });
    const path = `/tiles/${tile}/zones/${made.body.zones[0].id}`;
    const zoneNow = async () => (await get(`/tiles/${tile}`)).body.zones[0];
    await patch(path, { measuredColour: measured(picture) });
    expect((await zoneNow()).measuredColour).toMatchObject({ hex: '#767676', picture, burnt: 0 });
    await patch(path, { outline: BOX.toReversed() });
    expect((await zoneNow()).measuredColour).toBeNull();
    await patch(path, { measuredColour: measured(picture) });
    await used.api.delete(`${study}/pictures/${picture}`);
    expect(await zoneNow()).toMatchObject({ picture: null, outline: null, measuredColour: { picture } });
  });
});

describe('the demo’s pictures', () => {
  it('say that they are invented, and hold zones whose colours were measured against the card', async () => {
    const { id } = (await used.api.post('/api/demo')).body;
    const tiles = (await used.api.get(`/api/studies/${id}/tiles`)).body;
    const pictured = tiles.filter((one: { pictures: object[] }) => one.pictures.length > 0);
    expect(pictured.map((one: { label: string }) => one.label)).toEqual(['Tile 4', 'Tile 5']);
    for (const { pictures, zones } of pictured) {
      expect(pictures[0].caption).toContain('Invented');
      for (const zone of zones) {
        expect(zone).toMatchObject({ picture: pictures[0].id, outline: { length: 4 } });
        expect(zone.measuredColour).toMatchObject({ picture: pictures[0].id, grey: { reflectance: 0.18 } });
      }
      // Darker where it lies thicker: each as it was painted.
      const byCoats = zones.toSorted((a: { coats: number }, b: { coats: number }) => a.coats - b.coats);
      expect(byCoats.at(-1).measuredColour.lab[0]).toBeLessThan(byCoats[0].measuredColour.lab[0]);
    }
    const analyses = (await used.api.get(`/api/studies/${id}/analyses?specimen=${pictured[1].id}`)).body.rows;
    expect(analyses.map((one: { zoneLabel: string | null }) => one.zoneLabel).sort()).toEqual([
      'A1',
      'C1',
      null,
    ]);
  });
});
