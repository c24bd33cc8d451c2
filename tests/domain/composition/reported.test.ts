import { describe, expect, it } from 'vitest';
import { checkedReport } from '../../../api/domain/composition/reported.ts';
import type { ReportedValue } from '../../../api/domain/composition/types.ts';
import { emptyLedger, report, reported } from './build.ts';

const check = (...values: ReportedValue[]) => checkedReport(values, emptyLedger());

describe('checkedReport refuses, saying which analyte', () => {
  it.each<[string, ReportedValue[], string]>([
    ['an unknown analyte', [reported('Colour', 1)], 'found Colour'],
    ['an analyte in another spelling', [reported('sio2', 1)], 'found sio2'],
    ['an analyte twice', [reported('PbO', 1), reported('PbO', 2)], 'PbO is given twice'],
    ['a negative amount', [reported('SiO2', -0.1)], 'SiO2 is -0.1'],
    ['an amount that is no number', [reported('SiO2', Number.NaN)], 'SiO2 is NaN'],
    ['neither figure nor mark', [reported('SiO2', null, { belowDetection: false })], 'SiO2 is neither'],
    ['figure and mark', [reported('SiO2', 1, { belowDetection: true })], 'SiO2 is both'],
    ['a limit of zero', [reported('SnO2', null, { limit: 0 })], 'that of SnO2 is 0'],
    ['a negative uncertainty', [reported('SnO2', 1, { uncertainty: -1 })], 'that of SnO2 is -1'],
    [
      'atom % beside ppm',
      [reported('Si', 20, { unit: 'at%' }), reported('Sr', 90, { unit: 'ppm' })],
      'Sr in ppm',
    ],
    ['an oxide in atom %', [reported('SiO2', 20, { unit: 'at%' })], 'SiO2 is none: is mole % meant?'],
    ['LOI in atom %', [reported('LOI', 2, { unit: 'at%' })], 'LOI is none'],
  ])('%s', (_, values, words) => {
    expect(() => check(...values)).toThrow(words);
  });
});

describe('checkedReport', () => {
  it('passes good values unchanged, a gain on ignition and a total in another unit included', () => {
    const values = [
      ...report({ SiO2: 60, PbO: null, LOI: -0.4 }),
      reported('Total', 0),
      reported('Sr', 90, { unit: 'ppm' }),
    ];
    expect(check(...values)).toEqual(values);
    const atoms = [reported('Si', 20, { unit: 'at%' }), reported('Total', 100)];
    expect(check(...atoms)).toEqual(atoms);
  });

  it('takes a zero as below detection: at the stated limit, or one step of its last decimal', () => {
    const ledger = emptyLedger();
    const found = checkedReport(
      [
        reported('SnO2', 0, { limit: 0.02, resolution: 0.01 }),
        reported('CuO', 0, { resolution: 0.01 }),
        reported('Sr', 0, { resolution: 1, unit: 'ppm' }),
        reported('ZnO', 0, { resolution: 1 }),
      ],
      ledger,
    );
    expect(found.map(({ value, belowDetection, limit }) => [value, belowDetection, limit])).toEqual([
      [null, true, 0.02],
      [null, true, 0.01],
      [null, true, 1],
      [null, true, null],
    ]);
    expect(ledger.warnings).toHaveLength(4);
    expect(ledger.warnings[3]).toBe('ZnO is reported as 0; taken as below detection with no known limit.');
  });
});
