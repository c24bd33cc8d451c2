import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LogChoices, ReadLog } from '../../api/intake/log/types.ts';
import { understandLog } from '../../api/intake/log/understand.ts';
import { readLog } from '../../api/intake/logs.ts';

async function* inPieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}
const read = (text: string, choices: LogChoices = {}, size = 64): Promise<ReadLog> =>
  readLog(inPieces(new TextEncoder().encode(text), size), { choices });
const peaks = ({ digest }: ReadLog) => digest.channels.map((c) => c.peak?.celsius);
const kinds = ({ digest }: ReadLog) => digest.flags.map((f) => f.kind);

/** A slow rise and fall, one row a minute: 20 °C to 850 °C and back. */
const shape = (i: number) => Math.round(20 + 830 * Math.sin((Math.PI * i) / 60));
const lines = (line: (i: number) => string, n = 61) => Array.from({ length: n }, (_, i) => line(i));
const pad = (n: number) => String(n).padStart(2, '0');

describe('a log is read in every way that times are written', () => {
  const writings: readonly [string, string, string, (i: number) => string][] = [
    [
      'ISO date and time',
      'Time,Kiln (°C)',
      'clock',
      (i) => `2026-05-01T${pad(9 + Math.floor(i / 60))}:${pad(i % 60)}:00,${shape(i)}`,
    ],
    [
      'a date column and a time column',
      'Date;Time;Kiln [°C]',
      'clock',
      (i) => `01.05.2026;${pad(9 + Math.floor(i / 60))}:${pad(i % 60)}:00;${shape(i)},5`,
    ],
    [
      'month first, with am and pm',
      'Timestamp,Kiln °C',
      'clock',
      (i) => `05/13/2026 ${i < 60 ? 11 : 12}:${pad(i % 60)}:00 ${i < 60 ? 'AM' : 'PM'},${shape(i)}`,
    ],
    ['seconds since 1970', 'time,Kiln °C', 'epoch-seconds', (i) => `${1777626000 + 60 * i},${shape(i)}`],
    [
      'milliseconds since 1970',
      'time,Kiln °C',
      'epoch-milliseconds',
      (i) => `${1777626000000 + 60000 * i},${shape(i)}`,
    ],
    [
      'elapsed hours, minutes and seconds',
      'Elapsed,Kiln °C',
      'elapsed',
      (i) => `${Math.floor(i / 60)}:${pad(i % 60)}:00,${shape(i)}`,
    ],
    ['elapsed minutes', 'min\tKiln °C', 'minutes', (i) => `${i}\t${shape(i)}`],
    ['elapsed seconds', 'Time (s),Kiln °C', 'seconds', (i) => `${60 * i},${shape(i)}`],
    [
      'decimal hours with decimal commas',
      'Time (h);Kiln °C',
      'hours',
      (i) => `${String(i / 60).replace('.', ',')};${shape(i)},0`,
    ],
    [
      'a time of day past midnight',
      'Time,Kiln °C',
      'time-of-day',
      (i) => `${pad((23 + Math.floor((i + 30) / 60)) % 24)}:${pad((i + 30) % 60)}:00,${shape(i)}`,
    ],
    ['days of a spreadsheet', 'Date,Kiln °C', 'spreadsheet-days', (i) => `${46143 + i / 1440},${shape(i)}`],
    ['minutes and seconds', 'mm:ss,Kiln °C', 'minutes-seconds', (i) => `${i}:00,${shape(i)}`],
  ];
  for (const [name, header, kind, line] of writings)
    it(`${name}`, async () => {
      const found = await read([header, ...lines(line)].join('\r\n'));
      expect(found.understanding.time.kind).toBe(kind);
      expect(found.digest.duration).toBeCloseTo(3600, 0);
      expect(Math.floor(found.digest.channels[0]!.peak!.celsius)).toBe(850);
      expect(found.rows).toBe(61);
      expect(kinds(found)).toEqual([]);
      expect(found.understanding.channels.map((c) => c.name)).toEqual(['Kiln']);
    });

  it('keeps the start on the clock where the file gives a date', async () => {
    const found = await read(
      ['Time,K °C', ...lines((i) => `2026-05-01 09:${pad(i % 60)}:00,${shape(i)}`, 60)].join('\n'),
    );
    expect(found.digest.startedAt).toBe('2026-05-01T09:00:00');
  });

  it('says where a date could be read two ways', () => {
    const found = understandLog(['Time,K °C', '03/04/2026 09:00:00,20', '03/04/2026 09:01:00,25'].join('\n'));
    expect(found.time.dateOrder).toBe('dayFirst');
    expect(found.doubts[0]).toContain('can be read two ways');
  });

  it('takes figures without a unit as seconds, and says so', () => {
    const found = understandLog(['t;K °C', '0;20', '10;25', '20;30'].join('\n'));
    expect(found.time.kind).toBe('seconds');
    expect(found.doubts[0]).toContain('they were taken as seconds');
  });
});

describe('temperatures', () => {
  it('come from several channels with units of their own', async () => {
    const found = await read(
      [
        'No.,Time (s),Top (°F),Bottom (°C),Battery (%),Set point °C',
        ...lines((i) => `${i + 1},${60 * i},${(1.8 * shape(i) + 32).toFixed(1)},${shape(i) - 15},88,900`),
      ].join('\n'),
    );
    expect(found.understanding.channels.map((c) => [c.name, c.unit])).toEqual([
      ['Top', '°F'],
      ['Bottom', '°C'],
    ]);
    expect(found.understanding.ignored.map((c) => c.column)).toEqual([0, 4, 5]);
    expect(peaks(found)[0]).toBeCloseTo(850, 6);
    expect(peaks(found)[1]).toBe(835);
    expect(found.digest.channels[0]!.resolution).toBeCloseTo(0.1 / 1.8, 9);
  });

  it('take °F as °C only with a flag that says what is likelier', async () => {
    const found = await read(
      ['Time (min),K °C', ...lines((i) => `${i},${Math.round(1.8 * shape(i) + 32)}`)].join('\n'),
    );
    expect(kinds(found)).toContain('fahrenheit');
    expect(found.digest.flags[0]!.message).toContain('read as °F they are 20 °C and 850 °C');
    const chosen = await read(
      ['Time (min),K °C', ...lines((i) => `${i},${Math.round(1.8 * shape(i) + 32)}`)].join('\n'),
      {
        channels: [{ column: 1, name: 'K', unit: '°F', sensor: { kind: 'unknown' } }],
      },
    );
    expect(kinds(chosen)).toEqual([]);
    expect(peaks(chosen)[0]).toBeCloseTo(850, 6);
  });

  it('that are words are named with row and column, and instruments’ words for nothing are no fault', async () => {
    const found = await read(
      ['Time (min),Top °C', ...lines((i) => `${i},${i === 7 ? 'hot!' : i === 9 ? 'OL' : shape(i)}`)].join(
        '\n',
      ),
    );
    expect(found.problems.map((p) => p.message)).toEqual([
      'Row 9, column B (Top °C): a temperature needs a figure; found “hot!”; taken as no reading.',
    ]);
    const missing = found.digest.flags.find((f) => f.kind === 'missing');
    expect(missing).toMatchObject({ count: 2, row: 9, channel: 'Top' });
  });
});

describe('what is wrong with a log is said with its row', () => {
  it('rows without a time are left out and named', async () => {
    const found = await read(
      ['Time (min),K °C', ...lines((i) => `${i === 5 ? 'x' : i},${shape(i)}`)].join('\n'),
    );
    expect(found.rowsWithoutTime).toBe(1);
    expect(found.problems[0]!.message).toBe(
      'Row 7, column A (Time (min)): a row needs a time; found “x”; the row is left out.',
    );
  });

  it('a log whose times cannot be read is refused', async () => {
    const rows = ['Time (min),K °C', '0,20', '1,25', ...lines((i) => `noon,${shape(i)}`)];
    await expect(
      read(rows.join('\n'), { time: { kind: 'minutes', columns: [0], dateOrder: 'dayFirst' } }),
    ).rejects.toThrow('a log needs a readable time in most rows; found 2 of 63');
  });

  it('a file that is no log is refused with what it holds', async () => {
    await expect(read('')).rejects.toThrow('this file is empty');
    await expect(read('dear diary\nit was hot\n')).rejects.toThrow(
      'needs rows with a time and a temperature',
    );
    await expect(read('Colour,Kiln\nred,900\nblue,901\n')).rejects.toThrow(/needs/);
    await expect(read(`a\0b\n1,2\n`)).rejects.toThrow('not text');
    await expect(read('Time (s),Humidity %\n0,50\n1,51\n2,52\n')).rejects.toThrow(
      'a log needs a column of temperatures beside its times; found Time (s), Humidity %',
    );
  });

  it('a quotation mark left open does not swallow the machine', async () => {
    const rows = ['Time (s),K °C', '0,20', '1,21', '2,"22', ...lines((i) => `${i + 3},${shape(i)}`, 90_000)];
    await expect(read(rows.join('\n'), {}, 65_536)).rejects.toThrow('the one in row 4 is not');
    const long = [...rows, ...lines((i) => `${i},${shape(i)}`, 90_000)].join('\n');
    await expect(read(long, {}, 65_536)).rejects.toThrow(
      'row 4 is longer: is a quotation mark (") left open there?',
    );
  });

  it('a log can be stopped', async () => {
    const stop = new AbortController();
    const text = ['Time (s),K °C', ...lines((i) => `${i},${shape(i)}`, 50_000)].join('\n');
    const going = readLog(inPieces(new TextEncoder().encode(text), 4096), {
      signal: stop.signal,
      progress: () => stop.abort(),
    });
    await expect(going).rejects.toThrow(/abort/i);
  });
});

describe('what stands above the readings', () => {
  it('is passed over, and a row of units is joined to the headings', () => {
    const found = understandLog(
      [
        'Logger 7',
        'Firing of May',
        '',
        'Time;Top;Bottom',
        's;°C;°F',
        '0;20;68',
        '60;30;86',
        '120;40;104',
      ].join('\n'),
    );
    expect(found).toMatchObject({ delimiter: ';', firstRow: 6, headerRow: 4 });
    expect(found.channels.map((c) => [c.name, c.unit])).toEqual([
      ['Top', '°C'],
      ['Bottom', '°F'],
    ]);
    expect(found.time.kind).toBe('seconds');
  });

  it('may be missing', () => {
    const found = understandLog('0:00:00,20\n0:01:00,25\n0:02:00,31\n');
    expect(found).toMatchObject({ headerRow: null, firstRow: 1 });
    expect(found.channels[0]!.name).toBe('column B');
  });
});

describe('pieces and encodings', () => {
  const text = ['Zeit;Ofen °C', ...lines((i) => `${i}:00:00;${shape(i)},5`, 30)].join('\r\n');

  it('however the stream is cut, the answer is the same', async () => {
    const whole = await read(text, {}, 1e6);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 200 }), async (size) => {
        expect(await read(text, {}, size)).toEqual(whole);
      }),
      { numRuns: 15 },
    );
  });

  it('Windows-1252 and UTF-16 are told by their bytes', async () => {
    const latin = Uint8Array.from(text, (c) => c.charCodeAt(0));
    const wide = new Uint8Array([
      0xff,
      0xfe,
      ...[...text].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]),
    ]);
    const found = await Promise.all([latin, wide].map((b) => readLog(inPieces(b, 77))));
    expect(found.map((f) => f.encoding)).toEqual(['windows-1252', 'utf-16le']);
    expect(found.map((f) => f.understanding.channels[0]!.unit)).toEqual(['°C', '°C']);
    expect(found[1]!.digest).toEqual(found[0]!.digest);
  });
});
