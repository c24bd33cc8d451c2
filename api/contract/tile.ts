import { z } from 'zod';
import { GRADES } from '../domain/trials/types.ts';
import { measuredColour, outline } from './colour.ts';
import { id, instant, longText, name, shortText } from './common.ts';
import { pictures } from './picture.ts';

/** A setting of a factor: a number in its unit, or the name of a level. */
export const level = z.union([z.number(), shortText]);
const factorName = z.string().trim().min(1).max(60);
export const settings = z.record(factorName, level);
const share = z.number().min(0, 'a share is 0 to 1').max(1, 'a share is 0 to 1');
export const grade = z.enum(GRADES);
export const MOST_ZONES = 200;
export const DEFECTS = ['crawling', 'blisters', 'pinholes', 'flaking', 'running', 'crazing', 'soot'] as const;

const zoneFields = {
  /** Column letter and row number: `B2`. */
  label: z.string().trim().min(1, 'a zone needs a label').max(20),
  row: z.number().int().min(1).max(26).nullable(),
  column: z.number().int().min(1).max(26).nullable(),
  /** The picture that it is drawn on, and its corners there; beside its place on the grid, or instead of one. */
  picture: id.nullable(),
  outline: outline.nullable(),
  coats: z.number().min(0).max(50).nullable(),
  micrometres: z.number().min(0).max(5_000).nullable(),
  settings,
  grade: grade.nullable(),
  glassyShare: share.nullable(),
  colour: shortText,
  measuredColour: measuredColour.nullable(),
  defects: z.array(shortText).max(20),
  note: longText,
};
export const newZone = z
  .object({
    ...zoneFields,
    row: zoneFields.row.default(null),
    column: zoneFields.column.default(null),
    picture: zoneFields.picture.default(null),
    outline: zoneFields.outline.default(null),
    coats: zoneFields.coats.default(null),
    micrometres: zoneFields.micrometres.default(null),
    settings: settings.default({}),
    grade: zoneFields.grade.default(null),
    glassyShare: zoneFields.glassyShare.default(null),
    colour: shortText.default(''),
    measuredColour: zoneFields.measuredColour.default(null),
    defects: zoneFields.defects.default([]),
    note: longText.default(''),
  })
  .meta({ id: 'NewZone' });
export const zone = z.object({ id, ...zoneFields, label: z.string() }).meta({ id: 'Zone' });
export const zoneChange = z
  .object({
    picture: zoneFields.picture,
    outline: zoneFields.outline,
    coats: zoneFields.coats,
    micrometres: zoneFields.micrometres,
    settings,
    grade: zoneFields.grade,
    glassyShare: zoneFields.glassyShare,
    colour: shortText,
    measuredColour: zoneFields.measuredColour,
    defects: zoneFields.defects,
    note: longText,
  })
  .partial()
  .meta({ id: 'ZoneChange' });

const tileFields = {
  firing: id.nullable(),
  /** Where in the fire, as a person said: a factor of the trial. */
  place: shortText,
  /** 0 rows and 0 columns: no grid, its zones are drawn on pictures. */
  rows: z.number().int().min(0).max(26),
  columns: z.number().int().min(0).max(26),
  settings,
  zones: z.array(newZone).max(MOST_ZONES),
};
/** A tile or pot on a replica that is there (`specimen`), or on a new one (`label`). Without zones the grid is laid out empty. */
export const newTile = z
  .object({
    specimen: id.optional(),
    label: name.optional(),
    firing: tileFields.firing.default(null),
    place: tileFields.place.default(''),
    /** Place number that a plan drew by lot: printed, never a factor. */
    position: z.number().int().min(1).nullable().default(null),
    rows: tileFields.rows.default(2),
    columns: tileFields.columns.default(3),
    settings: settings.default({}),
    zones: tileFields.zones.optional(),
  })
  .meta({ id: 'NewTile' });
export const tileChange = z.object(tileFields).partial().meta({ id: 'TileChange' });

export const tile = z
  .object({
    /** The specimen's own id. */
    id,
    label: z.string(),
    notes: z.string(),
    firing: id.nullable(),
    firingName: z.string().nullable(),
    /** Batch that it was painted with; null where none is noted. */
    batch: id.nullable(),
    batchName: z.string().nullable(),
    place: z.string(),
    position: z.number().int().nullable(),
    rows: z.number().int(),
    columns: z.number().int(),
    settings,
    zones: z.array(zone),
    pictures,
    createdAt: instant,
    updatedAt: instant,
  })
  .meta({ id: 'Tile' });
export const tiles = z.array(tile);

export type NewTile = z.infer<typeof newTile>;
export type TileChange = z.infer<typeof tileChange>;
export type Tile = z.infer<typeof tile>;
export type ZoneRecord = z.infer<typeof zone>;
export type NewZone = z.infer<typeof newZone>;
export type ZoneChange = z.infer<typeof zoneChange>;
export type Settings = z.infer<typeof settings>;
