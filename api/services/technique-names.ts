import { TECHNIQUES } from './techniques.ts';

/** Other spellings in use, without spaces and signs. Common practice, no published source. */
const ALSO: Readonly<Record<string, string>> = {
  wavelengthdispersivexrf: 'WDXRF',
  energydispersivexrf: 'EDXRF',
  portablexrf: 'pXRF',
  handheldxrf: 'pXRF',
  hhxrf: 'pXRF',
  hxrf: 'pXRF',
  xrayfluorescence: 'XRF',
  eds: 'SEM-EDS',
  edx: 'SEM-EDS',
  edxs: 'SEM-EDS',
  sem: 'SEM-EDS',
  semedx: 'SEM-EDS',
  empa: 'EPMA',
  wds: 'EPMA',
  semwds: 'EPMA',
  epmawds: 'EPMA',
  microprobe: 'EPMA',
  electronmicroprobe: 'EPMA',
  icpaes: 'ICP-OES',
  icpes: 'ICP-OES',
  icp: 'ICP-OES',
  laicp: 'LA-ICP-MS',
  inaa: 'NAA',
  aa: 'AAS',
  faas: 'AAS',
  atomicabsorption: 'AAS',
};

const plain = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
const BY_NAME = new Map([
  ...Object.entries(ALSO),
  ...TECHNIQUES.flatMap(({ code, name }) => [[plain(code), code] as const, [plain(name), code] as const]),
]);

/** The code of a technique however a laboratory writes it; null when unknown. */
export function techniqueCode(text: string): string | null {
  return BY_NAME.get(plain(text)) ?? null;
}
