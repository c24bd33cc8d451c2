/** Apart from the schemas: a page that shows these names need not carry what checks them. */
export const FIGURES = ['scores', 'loadings', 'profile', 'pair', 'ternary', 'dendrogram', 'heatmap'] as const;
export const TRIAL_FIGURES = ['zones', 'effects', 'chance'] as const;
export const BATCH_FIGURES = ['fired'] as const;
export const FIGURE_FORMS = ['svg', 'pdf', 'png'] as const;
export const FIGURE_FORMATS = [
  'slide-16-9',
  'slide-4-3',
  'column-single',
  'column-double',
  'page',
  'page-dark',
] as const;
export type FigureName = (typeof FIGURES)[number];
export type TrialFigure = (typeof TRIAL_FIGURES)[number];
export type FigureForm = (typeof FIGURE_FORMS)[number];
export type FigureFormat = (typeof FIGURE_FORMATS)[number];

/** 4K UHD: beyond it a projector shows nothing more. */
export const WIDEST_PNG = 3840;
export const NARROWEST_PNG = 100;
