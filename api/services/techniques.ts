import type { Technique } from '../contract/lookups.ts';

const USUAL =
  'Relative error of a major oxide: common practice, no published source. State your own wherever it is known.';

/**
 * How analyses are made. `relativeError` stands in, marked as assumed, only where a laboratory states no uncertainty.
 */
export const TECHNIQUES: readonly Technique[] = (
  [
    ['WDXRF', 'Wavelength-dispersive X-ray fluorescence', 0.02],
    ['EDXRF', 'Energy-dispersive X-ray fluorescence', 0.05],
    ['XRF', 'X-ray fluorescence, which kind not stated', 0.05],
    ['pXRF', 'Portable X-ray fluorescence', 0.1],
    ['SEM-EDS', 'Electron microscope, energy-dispersive', 0.05],
    ['EPMA', 'Electron microprobe, wavelength-dispersive', 0.02],
    ['ICP-OES', 'Inductively coupled plasma, optical emission', 0.03],
    ['ICP-MS', 'Inductively coupled plasma, mass spectrometry', 0.05],
    ['LA-ICP-MS', 'Laser ablation, inductively coupled plasma mass spectrometry', 0.05],
    ['AAS', 'Atomic absorption spectrometry', 0.03],
    ['NAA', 'Neutron activation analysis', 0.03],
    ['PIXE', 'Proton-induced X-ray emission', 0.05],
    ['other', 'Another technique', null],
  ] as const
).map(([code, name, relativeError], position) => ({
  code,
  name,
  relativeError,
  note: relativeError === null ? '' : USUAL,
  position,
}));
