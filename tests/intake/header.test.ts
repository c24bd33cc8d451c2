import { describe, expect, it } from 'vitest';
import { readHeader } from '../../api/intake/header.ts';
import { headingOf, kindOf, measuredOf, rowNameOf } from '../../api/intake/words.ts';

describe('headings of analytes', () => {
  it.each([
    ['SiO2 (wt%)', 'SiO2', 'wt%'],
    ['SiO₂', 'SiO2', null],
    ['SiO<sub>2</sub> [wt.-%]', 'SiO2', 'wt%'],
    ['SiO2_wt%', 'SiO2', 'wt%'],
    ['Al2O3 Gew.-%', 'Al2O3', 'wt%'],
    ['Al2O3 Ma%', 'Al2O3', 'wt%'],
    ['K2O (mass%)', 'K2O', 'wt%'],
    ['% SiO2', 'SiO2', 'wt%'],
    ['Al2O3 %', 'Al2O3', 'wt%'],
    ['CaO % peso', 'CaO', 'wt%'],
    ['Fe2O3T', 'Fe2O3', null],
    ['FeO*', 'FeO', null],
    ['Fe2O3 (total) wt.%', 'Fe2O3', 'wt%'],
    ['Total iron as Fe2O3', 'Fe2O3', null],
    ['Si K', 'Si', null],
    ['SiK', 'Si', null],
    ['Fe Kα', 'Fe', null],
    ['Mn-K series', 'Mn', null],
    ['Pb L wt%', 'Pb', 'wt%'],
    ['Pb ppm', 'Pb', 'ppm'],
    ['Pb, mg/kg', 'Pb', 'ppm'],
    ['Pb µg/g', 'Pb', 'ppm'],
    ['Pb μg g⁻¹', 'Pb', 'ppm'],
    ['Cu [mg/kg]', 'Cu', 'ppm'],
    ['Cu mg kg-1', 'Cu', 'ppm'],
    ['Ag (ug/kg)', 'Ag', 'ppb'],
    ['Au ng/g', 'Au', 'ppb'],
    ['Si (at%)', 'Si', 'at%'],
    ['Atomic% Si', 'Si', 'at%'],
    ['208Pb ppm', 'Pb', 'ppm'],
    ['Sr88', 'Sr', null],
    ['Lead (Pb) ppm', 'Pb', 'ppm'],
    ['L.O.I. (1000°C)', 'LOI', null],
    ['Glühverlust', 'LOI', null],
    ['Perte au feu', 'LOI', null],
    ['Total wt%', 'Total', 'wt%'],
    ['Summe', 'Total', null],
    ['Σ', 'Total', null],
  ])('%j is %s in %s', (header, analyte, unit) => {
    expect(readHeader(header)).toMatchObject({ analyte, unit, statistic: null });
  });

  it.each([
    ['± SiO2', 'SiO2', 'unstated', false],
    ['SiO2 +/-', 'SiO2', 'unstated', false],
    ['SiO2 err', 'SiO2', 'unstated', false],
    ['u(SiO2)', 'SiO2', 'unstated', false],
    ['ΔSiO2', 'SiO2', 'unstated', false],
    ['SiO2 SD', 'SiO2', '1σ', false],
    ['SiO2 Std. Dev.', 'SiO2', '1σ', false],
    ['Pb_sd (ppm)', 'Pb', '1σ', false],
    ['Se SE', 'Se', '1σ', false],
    ['Al2O3 2σ', 'Al2O3', '2σ', false],
    ['Pb 2SD (ppm)', 'Pb', '2σ', false],
    ['MnO (wt.%) ± 1σ', 'MnO', '1σ', false],
    ['Fe 95 % CI', 'Fe', '95 %', false],
    ['SiO2 % RSD', 'SiO2', '1σ', true],
    ['2σ', null, '2σ', false],
    ['1s', null, '1σ', false],
    ['±', null, 'unstated', false],
    ['Weight % Sigma', null, '1σ', false],
    ['rel. %', null, '1σ', true],
  ])('%j is the uncertainty of %s, %s, relative %s', (header, analyte, basis, relative) => {
    expect(readHeader(header)).toMatchObject({ statistic: 'uncertainty', analyte, basis, relative });
  });

  it.each([
    ['LOD', null],
    ['MDL', null],
    ['LOD Cu', 'Cu'],
    ['Cu LOD (mg/kg)', 'Cu'],
    ['Pb detection limit', 'Pb'],
    ['Nachweisgrenze', null],
  ])('%j is the detection limit of %s', (header, analyte) => {
    expect(readHeader(header)).toMatchObject({ statistic: 'limit', analyte });
  });

  it.each([
    'Rb/Sr',
    'R B',
    'SiO2 1',
    'SiO2/Al2O3',
    'Na2O+K2O',
    'sample',
    'No',
    'ID',
    'thickness mm',
    'n',
    'δ18O',
    'Group',
    'Colour',
  ])('%j is no analyte', (header) => expect(readHeader(header).analyte).toBeNull());

  it('a unit nobody here holds is named instead of guessed at', () => {
    expect(readHeader('SiO2 mol%')).toMatchObject({ analyte: 'SiO2', unit: null, foreignUnit: 'mol%' });
    expect(readHeader('Pb cps')).toMatchObject({ analyte: 'Pb', unit: null, foreignUnit: 'cps' });
  });

  it('a unit or a statistic alone is bare', () => {
    for (const header of ['wt%', 'Atomic %', 'ppm', '±', 'LOD', 'Conc. (wt%)'])
      expect(readHeader(header)).toMatchObject({ analyte: null, bare: true });
  });
});

describe('other headings and words', () => {
  it.each([
    ['Sample', 'specimen'],
    ['sherd no.', 'specimen'],
    ['Probennummer', 'specimen'],
    ['Échantillon', 'specimen'],
    ['Campione', 'specimen'],
    ['Muestra', 'specimen'],
    ['Δείγμα', 'specimen'],
    ['Fabric', 'group'],
    ['Warengruppe', 'group'],
    ['Spectrum', 'spot'],
    ['Messpunkt', 'spot'],
    ['Laboratoire', 'laboratory'],
    ['Método', 'technique'],
    ['Fecha', 'date'],
    ['DOI', 'doi'],
    ['Literatur', 'source'],
    ['Bemerkungen', 'note'],
    ['Oxide', 'analyteName'],
    ['Value', 'value'],
    ['Einheit', 'unit'],
  ])('%j heads the %s', (header, role) => expect(headingOf(header)?.role).toBe(role));

  it('parts and kinds are known in several languages, and nothing else is', () => {
    expect(['Paint', 'engobe', 'Scherben', 'pâte', 'impasto', 'πηλός', 'bulk'].map(measuredOf)).toEqual([
      ...['paint', 'slip', 'body', 'body', 'body', 'body', 'whole'],
    ]);
    expect(['sherd', 'Tile', 'raw material', 'x'].map(kindOf)).toEqual([
      'sherd',
      'replica',
      'material',
      null,
    ]);
    expect(measuredOf('handle')).toBeNull();
  });

  it.each([
    ['LOD', 'limit'],
    ['Detection limit (ppm)', 'limit'],
    ['Nachweisgrenze', 'limit'],
    ['Mean', 'summary'],
    ['Std. dev.', 'summary'],
    ['Mittelwert', 'summary'],
    ['RSD %', 'summary'],
    ['±', 'uncertainty'],
    ['2σ', 'uncertainty'],
    ['R-17', null],
    ['Meander 3', null],
    ['N 12', null],
    ['Minoan', null],
  ])('a row named %j is %s', (label, kind) => expect(rowNameOf(label)).toBe(kind));
});
