import { useState } from 'react';
import type { Picture } from '../../../../api/contract/picture.ts';
import type { Tile } from '../../../../api/contract/tile.ts';
import type { Outline } from '../../../../api/domain/colour/types.ts';
import { useChangeZone } from '../../../queries/fire.ts';
import { useAddZone, useChangePicture } from '../../../queries/pictures.ts';
import type { Shape } from './Shapes.tsx';

export const GREY = 'grey';
export const NEW_ZONE = 'new';
/** Common practice for grey cards, no published source. */
export const GREY_CARD = 0.18;

interface Of {
  readonly tile: Tile;
  readonly picture: Picture;
}

/** What is outlined next, and where the outline goes when it is drawn. */
export function useOutlining(study: string, { tile, picture }: Of) {
  const [target, setTarget] = useState(() => nextTarget(tile, picture, null));
  const [drawing, setDrawing] = useState(false);
  const [typed, setTyped] = useState<string | null>(null);
  const [reflectance, reflect] = useState(picture.grey?.reflectance ?? GREY_CARD);
  const change = useChangeZone(study, tile.id);
  const add = useAddZone(study, tile.id);
  const regard = useChangePicture(study);
  const label =
    target === NEW_ZONE
      ? (typed ?? freeLabel(tile))
      : (tile.zones.find((zone) => zone.id === target)?.label ?? target);
  const done = {
    onSuccess: () => setTarget(nextTarget(tile, picture, target)),
    onError: () => setTyped(typed),
  };
  const keep = (outline: Outline) => {
    setDrawing(false);
    // Now, not when it is kept: the zone there already would bear the name that is still typed.
    setTyped(null);
    const corners = outline.map(([x, y]): [number, number] => [x, y]);
    if (target === GREY)
      regard.mutate({ picture: picture.id, change: { grey: { outline: corners, reflectance } } }, done);
    else if (target === NEW_ZONE) add.mutate({ label, picture: picture.id, outline: corners }, done);
    else change.mutate({ zone: target, change: { picture: picture.id, outline: corners } }, done);
  };
  return {
    ...{ target, label, drawing, reflectance, reflect, keep },
    choose: setTarget,
    name: setTyped,
    start: () => setDrawing(true),
    stop: () => setDrawing(false),
    busy: change.isPending || add.isPending || regard.isPending,
    error: change.error ?? add.error ?? regard.error,
  };
}

/** The grey first, then zone by zone those that lie nowhere yet, then new ones. */
function nextTarget({ zones }: Tile, { grey }: Picture, drawnNow: string | null): string {
  if (grey === null && drawnNow !== GREY) return GREY;
  return zones.find((zone) => zone.outline === null && zone.id !== drawnNow)?.id ?? NEW_ZONE;
}

function freeLabel({ zones }: Tile): string {
  const taken = new Set(zones.map((zone) => zone.label));
  for (let n = 1; ; n++) if (!taken.has(`Z${n}`)) return `Z${n}`;
}

export function choicesOf({ zones }: Tile, picture: Picture) {
  const drawn = (where: string | null) =>
    where === null
      ? 'not drawn yet'
      : where === picture.id
        ? 'drawn here; draw it anew'
        : 'drawn on another picture';
  return [
    {
      id: GREY,
      label: 'Grey patch',
      hint: picture.grey ? 'drawn here; draw it anew' : 'for measuring colours',
    },
    ...zones.map((zone) => ({ id: zone.id, label: `Zone ${zone.label}`, hint: drawn(zone.picture) })),
    { id: NEW_ZONE, label: 'A new zone' },
  ];
}

export function shapesOf({ zones }: Tile, { id, grey }: Picture): Shape[] {
  const ofZones = zones.flatMap(({ outline, picture, ...zone }): Shape[] =>
    outline && picture === id
      ? [{ id: zone.id, label: zone.label, outline, look: zone.grade ?? 'open' }]
      : [],
  );
  return grey ? [...ofZones, { id: GREY, label: 'grey', outline: grey.outline, look: 'grey' }] : ofZones;
}
