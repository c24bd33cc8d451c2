import { z } from 'zod';
import { id } from './common.ts';
import { FIGURE_FORMATS, FIGURE_FORMS, FIGURES, NARROWEST_PNG, WIDEST_PNG } from './figure-names.ts';
import { comparisonRequest } from './placement.ts';

export * from './figure-names.ts';

const filesOf = <Name extends string>(names: readonly Name[]) =>
  names.flatMap((figure) => FIGURE_FORMS.map((form) => `${figure}.${form}` as const));
/** Addresses of figures: which one, and as which kind of file. */
export const fileOf = <Name extends string>(names: readonly Name[]) =>
  z.enum(filesOf(names)).meta({ description: 'Which figure, and as which kind of file' });

export const FIGURE_FILES = filesOf(FIGURES);
export const figureFile = fileOf(FIGURES);
export type FigureFile = (typeof FIGURE_FILES)[number];

const flag = (usual: boolean) =>
  z.union([z.boolean(), z.enum(['true', 'false']).transform((word) => word === 'true')]).default(usual);
const component = z.coerce.number().int().min(1).max(60);

/** What a figure is made for. */
export const figureSheet = z.object({
  format: z.enum(FIGURE_FORMATS).default('slide-16-9'),
  /** Of a PNG, in pixels. */
  width: z.coerce.number().int().min(NARROWEST_PNG).max(WIDEST_PNG).default(1920),
});
export type FigureSheet = z.infer<typeof figureSheet>;

/** How a figure of a comparison is looked at: all of it can be told in an address. */
export const figureLook = figureSheet
  .extend({
    /** The replica drawn foremost; the first one where none is named. */
    replica: id.optional(),
    /** The ware group a profile is held against; the one the sentence speaks of where none is named. */
    against: id.optional(),
    /** Principal components, counted from 1. */
    across: component.default(1),
    up: component.default(2),
    level: z.coerce.number().min(0.5).max(0.999).default(0.95),
    ellipses: flag(true),
    loadings: flag(false),
    naming: z.enum(['replicas', 'chosen', 'everything', 'nothing']).default('replicas'),
    basis: z.enum(['ratio', 'amount']).default('ratio'),
    others: flag(false),
    /** Oxides of a plot of two (across, up) or a ternary diagram (top, left, right); else those that tell the most. */
    oxides: z
      .string()
      .max(80)
      .transform((text) => text.split(','))
      .optional()
      .meta({ description: 'Two or three of the oxides compared, with commas between' }),
    axis: z.enum(['log', 'linear']).default('log'),
    linkage: z.enum(['ward', 'average']).default('ward'),
    /** Part of the score plane shown, as x,x,y,y; all of it where none is given. */
    view: z
      .string()
      .max(120)
      .transform((text) => text.split(',').map(Number))
      .pipe(z.array(z.number()).length(4))
      .optional()
      .meta({
        description: 'Part of the score plane shown: from, to across, from, to up, with commas between',
      }),
  })
  .meta({ id: 'FigureLook' });
export type FigureLook = z.infer<typeof figureLook>;
/** A look as it is asked for. */
export type FigureWish = z.input<typeof figureLook>;

export const figureOrder = z.object({ comparison: comparisonRequest, look: figureLook.prefault({}) });

const citation = z.object({ text: z.string(), doi: z.string() });
/** What stands beside figures: a caption for each that can be drawn, methods, and published methods used. */
export const figureWords = z
  .object({
    captions: z.record(z.string(), z.string()),
    methods: z.string(),
    references: z.array(citation),
  })
  .meta({ id: 'FigureWords' });
export type FigureWords = z.infer<typeof figureWords>;

/** What stands beside the figures of a comparison in a paper or a talk. */
export const comparisonText = z
  .object({
    captions: z.record(z.enum(FIGURES), z.string()),
    methods: z.string(),
    /** Published methods used. */
    references: z.array(citation),
    /** Whose figures the comparison rests on. */
    sources: z.array(
      z.object({
        kind: z.enum(['ware group', 'analyses']),
        name: z.string(),
        source: z.string(),
        doi: z.string(),
        n: z.number().int(),
      }),
    ),
  })
  .meta({ id: 'ComparisonText' });
export type ComparisonText = z.infer<typeof comparisonText>;
export type ComparisonSource = ComparisonText['sources'][number];
