import { Resvg } from '@resvg/resvg-js';
import { NARROWEST_PNG, WIDEST_PNG } from '../contract/figure.ts';
import { RequirementError } from '../domain/requirement.ts';
import { FONT_FAMILY, FONT_FILES } from './fonts.ts';

/** Paints an SVG file into a PNG of the wanted width in pixels, with the project's own font and no other. */
export function paintPng(svg: string, width: number): Uint8Array {
  if (!Number.isInteger(width) || width < NARROWEST_PNG || width > WIDEST_PNG)
    throw new RequirementError(
      `a PNG is a whole number of pixels wide, ${NARROWEST_PNG} to ${WIDEST_PNG}; ${width} was asked for`,
    );
  const font = {
    fontFiles: Object.values(FONT_FILES),
    loadSystemFonts: false,
    defaultFontFamily: FONT_FAMILY,
    sansSerifFamily: FONT_FAMILY,
  };
  return new Resvg(svg, { fitTo: { mode: 'width', value: width }, font }).render().asPng();
}
