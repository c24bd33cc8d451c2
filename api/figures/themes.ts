import type { Theme } from './figure.ts';

/**
 * Our own palettes, searched by scripts/palette/run.ts: no two colours closer than 12 CIEDE2000 to one another, the
 * accent or the ink under any colour-vision deficiency of Machado et al. 2009 (doi 10.1109/TVCG.2009.113), and each
 * at least 3:1 on its background (WCAG 2.2). A group keeps its hue family from light to dark.
 */
const ON_LIGHT = ['#1e5ec5', '#149a95', '#766c13', '#7f1a04', '#bf7a54', '#005d3b', '#632d6e', '#9e7bcb'];
const ON_DARK = ['#4daeff', '#35837a', '#949966', '#bf5a00', '#f6ae40', '#5aea97', '#fbccfd', '#816fdf'];

const pageLight: Theme = {
  name: 'page-light',
  background: '#fefcf7',
  ink: '#26211e',
  faint: '#645b53',
  grid: '#e3dccf',
  accent: '#c73667',
  fontFamily: "'Source Sans 3', system-ui, sans-serif",
  fontSize: 13,
  lineWidth: 1.25,
  markSize: 8,
  palette: ON_LIGHT,
};
const onWhite = { background: '#ffffff', grid: '#dddddd' };

export const THEMES: Readonly<Record<Theme['name'], Theme>> = {
  'page-light': pageLight,
  'page-dark': {
    ...pageLight,
    name: 'page-dark',
    background: '#23201e',
    ink: '#ece6db',
    faint: '#b0a699',
    grid: '#403a35',
    accent: '#f55ea4',
    palette: ON_DARK,
  },
  /** Drawn 540 px high and shown full screen, where 540 px are 7.5 in: 20 px are 20 pt. */
  slide: { ...pageLight, ...onWhite, name: 'slide', fontSize: 20, lineWidth: 2.25, markSize: 12 },
  /** One px is one point on paper. */
  print: {
    ...pageLight,
    ...onWhite,
    name: 'print',
    ink: '#000000',
    fontSize: 8,
    lineWidth: 0.75,
    markSize: 5,
  },
};
