import { type MaterialNotes, materialFromAnalysis, materialFromFormula } from './material.ts';
import type { Hazard, Material } from './types.ts';

const LEAD = 'Damp it before grinding, wear a fitted respirator and gloves, wipe up wet, wash before eating.';
const DUST = 'Keep dust down: weigh damp or under a fitted respirator, wipe up wet.';
const MANGANESE = 'Do not breathe the dust or stand in the kiln smoke.';

/** Minerals by ideal formula: id, name, formula, handling. */
const BY_FORMULA: readonly (readonly [string, string, string, string])[] = [
  [
    'galena',
    'Galena',
    'PbS',
    `${LEAD} Grind and roast it, outdoors, before it goes into a paint; roasting gives off sulfur dioxide.`,
  ],
  ['cerussite', 'Cerussite', 'PbCO3', LEAD],
  ['hydrocerussite', 'Hydrocerussite (white lead)', '2PbCO3·Pb(OH)2', LEAD],
  ['litharge', 'Litharge', 'PbO', LEAD],
  ['minium', 'Minium (red lead)', 'Pb3O4', LEAD],
  ['anglesite', 'Anglesite', 'PbSO4', `${LEAD} Part of its sulfur leaves as sulfur dioxide.`],
  ['pyrolusite', 'Pyrolusite', 'MnO2', MANGANESE],
  ['manganite', 'Manganite', 'MnO(OH)', MANGANESE],
  ['hausmannite', 'Hausmannite', 'Mn3O4', MANGANESE],
  ['malachite', 'Malachite', 'Cu2CO3(OH)2', DUST],
  ['azurite', 'Azurite', 'Cu3(CO3)2(OH)2', DUST],
  ['cuprite', 'Cuprite', 'Cu2O', DUST],
  ['tenorite', 'Tenorite', 'CuO', DUST],
  ['hematite', 'Hematite', 'Fe2O3', DUST],
  ['goethite', 'Goethite', 'FeO(OH)', DUST],
  ['magnetite', 'Magnetite', 'Fe3O4', DUST],
  ['quartz', 'Quartz', 'SiO2', DUST],
  ['kaolinite', 'Kaolinite', 'Al2Si2O5(OH)4', DUST],
  ['potash-feldspar', 'Potash feldspar', 'KAlSi3O8', DUST],
  ['soda-feldspar', 'Soda feldspar', 'NaAlSi3O8', DUST],
  ['calcite', 'Calcite', 'CaCO3', DUST],
  ['dolomite', 'Dolomite', 'CaMg(CO3)2', DUST],
  ['talc', 'Talc', 'Mg3Si4O10(OH)2', `${DUST} Some talc carries asbestos fibres: ask the supplier.`],
];

const WOOD_ASH: MaterialNotes = {
  id: 'wood-ash',
  name: 'Wood ash (tree prunings)',
  hazards: ['caustic' as Hazard],
  handling: 'Caustic when wet: wear gloves and eye protection; keep the dust down.',
  source:
    'E. A. Osman and J. R. Goss 1983, Ash chemical composition, deformation and fusion temperatures for wood and agricultural residues, American Society of Agricultural Engineers winter meeting; entry 308 of the Phyllis biomass database (ECN/TNO). Laboratory ash, 575 °C, 14 h; alumina, carbonate and chlorine not reported. Ashes differ greatly: replace it by an analysis of your own.',
};

const BRICK_CLAY: MaterialNotes = {
  id: 'red-clay',
  name: 'Red-firing clay (stand-in: NIST SRM 679)',
  handling: DUST,
  source:
    'NIST SRM 679 Brick Clay as given in Hein, doi 10.1039/b109603f: a laboratory reference material standing in for a red-firing clay, with no loss on ignition stated. Replace it by an analysis of the clay in use.',
};

/**
 * The materials that a new study starts with: minerals by ideal formula, one published wood ash, and a reference
 * brick clay standing in for a red-firing clay until the user's own clay is analysed. Prices and amounts are empty.
 * @example
 * starterShelf().length // 25
 * starterShelf().find((m) => m.id === 'kaolinite').content.moles.Al // 0.00774725
 */
export function starterShelf(): Material[] {
  const minerals = BY_FORMULA.map(([id, name, formula, handling]) =>
    materialFromFormula({ id, name, handling, source: `ideal formula ${formula}` }, formula),
  );
  return [...minerals, woodAsh(), brickClay()];
}

function woodAsh(): Material {
  const values = {
    ...{ SO3: 19.72, P2O5: 4.96, SiO2: 9.95, Fe2O3: 1.94 },
    ...{ CaO: 19.87, MgO: 8.29, Na2O: 1.48, K2O: 12.66 },
  };
  return materialFromAnalysis(WOOD_ASH, { values, lossOnIgnition: null });
}

/** wt% of each element; one standard deviation is half the ± of the certificate, taken as 95 %. */
function brickClay(): Material {
  const values = {
    ...{ Al: 11.01, Fe: 9.05, Si: 24.34, K: 2.433, Mg: 0.7552 },
    ...{ Ca: 0.1628, Ti: 0.577, Na: 0.1304, Mn: 0.173, P: 0.075 },
  };
  const sigma = { Al: 0.17, Fe: 0.105, Si: 0.15, K: 0.0235, Ca: 0.00065, Ti: 0.0165 };
  return materialFromAnalysis(BRICK_CLAY, { values, lossOnIgnition: null, sigma });
}
