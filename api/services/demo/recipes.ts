/**
 * The invented ware of an invented valley. No sherd, kiln or publication named here exists; the numbers were
 * chosen to make a lively demonstration and are evidence of nothing.
 */
export type Recipe = Readonly<Record<string, number>>;

export const PLACE = 'Tessary Vale (invented)';
export const INVENTED = 'Invented for demonstration; there is no such publication.';

export interface InventedWare {
  readonly name: string;
  readonly period: string;
  readonly place: string;
  readonly count: number;
  readonly label: string;
  readonly notes: string;
  /** Fired paint without slip, parts by mass. */
  readonly paint: Recipe;
  /** Standard deviation of each oxide's logarithm, for the whole ware. */
  readonly spread: Recipe;
  readonly slip: Recipe;
  /** Share of slip in the paint's reading: mean and standard deviation. */
  readonly slipShare: readonly [number, number];
}

const REDSLIP: Recipe = {
  SiO2: 58.5,
  Al2O3: 22.4,
  Fe2O3: 9.6,
  MgO: 2.1,
  CaO: 1.9,
  Na2O: 0.9,
  K2O: 3.5,
  TiO2: 0.98,
  P2O5: 0.15,
  MnO: 0.09,
};
const PALESLIP: Recipe = {
  SiO2: 63.2,
  Al2O3: 26.1,
  Fe2O3: 2.4,
  MgO: 0.9,
  CaO: 1.1,
  Na2O: 0.5,
  K2O: 4.1,
  TiO2: 1.3,
  P2O5: 0.1,
  MnO: 0.03,
};
const SPREAD: Recipe = {
  SiO2: 0.1,
  Al2O3: 0.14,
  Fe2O3: 0.18,
  MgO: 0.18,
  CaO: 0.2,
  Na2O: 0.22,
  K2O: 0.15,
  TiO2: 0.14,
  P2O5: 0.3,
  MnO: 0.22,
  CuO: 0.35,
  PbO: 0.13,
  SO3: 0.4,
};

export const WARES: readonly InventedWare[] = [
  {
    name: 'Vale black, early',
    period: 'Early Vale phase',
    place: 'Upper Tessary',
    count: 24,
    label: 'UT',
    notes: 'Glassy black lines on a red slip.',
    paint: {
      SiO2: 30,
      Al2O3: 4.1,
      Fe2O3: 3.4,
      MgO: 0.55,
      CaO: 1.3,
      Na2O: 0.35,
      K2O: 0.9,
      TiO2: 0.2,
      P2O5: 0.25,
      MnO: 8.6,
      CuO: 0.9,
      PbO: 49,
      SO3: 0.45,
    },
    spread: SPREAD,
    slip: REDSLIP,
    slipShare: [0.16, 0.05],
  },
  {
    name: 'Vale black, late',
    period: 'Late Vale phase',
    place: 'Lower Tessary',
    count: 16,
    label: 'LT',
    notes: 'Thinner lines, browner where the slip shows through.',
    paint: {
      SiO2: 34,
      Al2O3: 5,
      Fe2O3: 6.8,
      MgO: 0.8,
      CaO: 2.2,
      Na2O: 0.5,
      K2O: 1.3,
      TiO2: 0.26,
      P2O5: 0.4,
      MnO: 5.2,
      CuO: 4.1,
      PbO: 39,
      SO3: 0.35,
    },
    spread: SPREAD,
    slip: REDSLIP,
    slipShare: [0.22, 0.06],
  },
  {
    name: 'Quay Kiln matt',
    period: 'Late Vale phase',
    place: 'Quay Kiln, Lower Tessary',
    count: 11,
    label: 'QK',
    notes: 'Matt black; hardly any lead.',
    paint: {
      SiO2: 37,
      Al2O3: 13,
      Fe2O3: 21,
      MgO: 1.5,
      CaO: 2.4,
      Na2O: 0.6,
      K2O: 2,
      TiO2: 0.6,
      P2O5: 0.5,
      MnO: 17,
      CuO: 0.06,
      PbO: 4.2,
      SO3: 0.08,
    },
    spread: { ...SPREAD, PbO: 0.4 },
    slip: PALESLIP,
    slipShare: [0.1, 0.04],
  },
  {
    name: 'Harl Point green-black',
    period: 'Middle Vale phase',
    place: 'Harl Point',
    count: 6,
    label: 'HP',
    notes: 'Six sherds only: read its numbers with that in mind.',
    paint: {
      SiO2: 27,
      Al2O3: 3,
      Fe2O3: 2.1,
      MgO: 0.5,
      CaO: 0.9,
      Na2O: 0.4,
      K2O: 0.7,
      TiO2: 0.14,
      P2O5: 0.2,
      MnO: 3.4,
      CuO: 7.9,
      PbO: 53,
      SO3: 0.7,
    },
    spread: SPREAD,
    slip: PALESLIP,
    slipShare: [0.14, 0.04],
  },
  {
    name: 'Sarn brown',
    period: 'Early Vale phase',
    place: 'Sarn Ford',
    count: 13,
    label: 'SF',
    notes: 'Brown glassy lines; iron in place of manganese.',
    paint: {
      SiO2: 33,
      Al2O3: 4.6,
      Fe2O3: 12.5,
      MgO: 0.7,
      CaO: 1.6,
      Na2O: 0.4,
      K2O: 1,
      TiO2: 0.24,
      P2O5: 0.3,
      MnO: 0.7,
      CuO: 0.25,
      PbO: 44,
      SO3: 0.4,
    },
    spread: SPREAD,
    slip: REDSLIP,
    slipShare: [0.19, 0.06],
  },
];

export interface InventedTile {
  readonly label: string;
  readonly paint: Recipe;
  readonly slipShare: number;
  readonly technique: 'EDXRF' | 'SEM-EDS';
  readonly notes: string;
}

const MIX = WARES[0]!.paint;
/** Nine tiles after one question: why did the paint go glassy only in places? All aim at Vale black, early. */
export const TILES: readonly InventedTile[] = [
  tile(
    'Tile 1',
    { PbO: 21, SO3: 7.2, SiO2: 41 },
    0.2,
    'EDXRF',
    'Published percentages copied, raw galena, two coats. Matt.',
  ),
  tile('Tile 2', { PbO: 30, SO3: 8.8 }, 0.18, 'EDXRF', 'More raw galena. Matt, grey in places.'),
  tile('Tile 3', { SO3: 1.9 }, 0.46, 'EDXRF', 'Roasted galena, one coat. Matt; slip shows through.'),
  tile('Tile 4', { SO3: 1.6 }, 0.3, 'EDXRF', 'Roasted galena, two coats. Satin.'),
  tile('Tile 5', { SO3: 1.5 }, 0.17, 'EDXRF', 'Roasted galena, four coats. Glassy over most of the tile.'),
  tile('Tile 6', { SO3: 0.6, MnO: 8.2 }, 0.15, 'SEM-EDS', 'Roasted twice, four coats. Glassy, rich black.'),
  tile('Tile 7', { PbO: 27, SO3: 0.7 }, 0.16, 'SEM-EDS', 'Lead cut by nearly half. Satin at best.'),
  tile(
    'Tile 8',
    { MnO: 2.1, Fe2O3: 9 },
    0.18,
    'EDXRF',
    'A different ore: more iron than manganese. Brown, glassy.',
  ),
  tile('Tile 9', { SO3: 0.5 }, 0.15, 'SEM-EDS', 'Fritted with quartz, four coats. Glassy.'),
];

function tile(
  label: string,
  changes: Recipe,
  slipShare: number,
  ...[technique, notes]: [InventedTile['technique'], string]
): InventedTile {
  return { label, paint: { ...MIX, ...changes }, slipShare, technique, notes };
}

/** What each invented laboratory can see: detection limit in wt%, relative error, and what it does not measure. */
export interface InventedLaboratory {
  readonly name: string;
  readonly instrument: string;
  readonly relativeError: number;
  readonly limits: Recipe;
  readonly blind: readonly string[];
}
export const LABORATORIES: Readonly<Record<InventedTile['technique'], InventedLaboratory>> = {
  'SEM-EDS': {
    name: 'Vale College microscope (invented)',
    instrument: 'SEM-EDS, 20 kV, standards of glass (invented)',
    relativeError: 0.012,
    limits: { SO3: 0.2, CuO: 0.15, P2O5: 0.15, TiO2: 0.08, Na2O: 0.1, MgO: 0.08, MnO: 0.08 },
    blind: [],
  },
  EDXRF: {
    name: 'Harbour bench XRF (invented)',
    instrument: 'Bench-top ED-XRF, 40 kV, spot 3 mm (invented)',
    relativeError: 0.02,
    limits: { SO3: 0.3, CuO: 0.01, P2O5: 0.1, TiO2: 0.02, MgO: 0.3, MnO: 0.01 },
    blind: ['Na2O'],
  },
};
