/** A corner in a picture: shares of its width (from the left) and height (from the top), 0–1. */
export type Corner = readonly [x: number, y: number];
/** Corners of a shape in a picture, in order round it. */
export type Outline = readonly Corner[];
/** CIE 1976 L*, a*, b* against the white of sRGB (D65, 2° observer). */
export type Lab = readonly [lightness: number, greenRed: number, blueYellow: number];
/** Shares of sRGB's full red, green and blue in linear light. */
export type LinearRgb = readonly [red: number, green: number, blue: number];

/** A picture as a canvas gives it: red, green, blue and opacity of each pixel, 0–255, row by row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: ArrayLike<number>;
}

/** A grey card or patch in the picture, and the share of light that it reflects, 0–1. */
export interface Grey {
  readonly outline: Outline;
  readonly reflectance: number;
}

/** The light inside an outline. */
export interface Patch {
  readonly pixels: number;
  readonly mean: LinearRgb;
  /** Means of squares of 16 pixels a side: neighbours in a JPEG share their colour, so they are no separate readings. */
  readonly blocks: readonly LinearRgb[];
  /** Share of pixels with a channel at its upper end, where brighter can no longer be told. */
  readonly burnt: number;
  /** Share of pixels with every channel at its lower end. */
  readonly drowned: number;
}

export interface MeasuredColour {
  readonly lab: Lab;
  /** Standard error of L*, a*, b* from the unevenness of zone and grey; null where either is too small to tell. */
  readonly error: Lab | null;
  /** Standard deviation of L*, a*, b* from pixel to pixel. */
  readonly spread: Lab;
  /** The colour as `#rrggbb`; held to what a screen can show. */
  readonly hex: string;
  /** Whether a screen of sRGB can show it. */
  readonly shown: boolean;
  readonly pixels: number;
  readonly burnt: number;
  readonly drowned: number;
  readonly grey: Grey;
  readonly method: string;
  readonly cautions: readonly string[];
}
