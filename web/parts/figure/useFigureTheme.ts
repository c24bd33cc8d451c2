import type { Theme } from '../../../api/figures/figure.ts';
import { THEMES } from '../../../api/figures/themes.ts';
import { useAppearance } from '../../appearance.ts';

/** The figure theme that goes with what is on the screen now. */
export const useFigureTheme = (): Theme => THEMES[useAppearance() === 'dark' ? 'page-dark' : 'page-light'];
