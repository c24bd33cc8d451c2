import { useState } from 'react';
import type { Picture } from '../../../../api/contract/picture.ts';
import type { Tile } from '../../../../api/contract/tile.ts';
import { measureColour } from '../../../../api/domain/colour/measure.ts';
import type { MeasuredColour } from '../../../../api/domain/colour/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { count } from '../../../parts/numbers.ts';
import { messageOf } from '../../../problem.ts';
import { useChangeZone } from '../../../queries/fire.ts';
import { pictureUrl } from '../../../queries/pictures.ts';
import { pixelsOf } from './pixels.ts';

interface Outcome {
  readonly done: number;
  readonly refused: readonly { readonly label: string; readonly why: string }[];
}

/** Reads the colour of every zone drawn on the picture against its grey patch. */
export function MeasureColours(at: {
  readonly study: string;
  readonly tile: Tile;
  readonly picture: Picture;
}) {
  const { study, tile, picture } = at;
  const { mutateAsync } = useChangeZone(study, tile.id);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const [error, setError] = useState<unknown>(null);
  const zones = tile.zones.filter((zone) => zone.picture === picture.id && zone.outline);
  const measure = async () => {
    setBusy(true);
    setError(null);
    const refused: { label: string; why: string }[] = [];
    try {
      const pixels = await pixelsOf(pictureUrl(study, picture.id));
      for (const { id, label, outline } of zones) {
        const found = tried(() => measureColour(pixels, outline!, picture.grey));
        if (typeof found === 'string') refused.push({ label, why: found });
        else await mutateAsync({ zone: id, change: { measuredColour: kept(found, picture) } });
      }
      setOutcome({ done: zones.length - refused.length, refused });
    } catch (reason) {
      setError(reason);
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="stack tight">
      <div className="row">
        <Button onPress={() => void measure()} isDisabled={zones.length === 0} isPending={busy}>
          Measure the colours
        </Button>
        <span className="hint">
          {zones.length === 0
            ? 'Draw a zone first.'
            : picture.grey
              ? `Of ${count(zones.length, 'zone')}, against the grey patch.`
              : 'Outline the grey patch first; without one a colour can only be typed in.'}
        </span>
      </div>
      {outcome && outcome.done > 0 && (
        <Notice kind="done">{count(outcome.done, 'colour')} measured; see the table below.</Notice>
      )}
      {outcome && outcome.refused.length > 0 && (
        <Notice kind="caution" title="Not measured">
          <ul>
            {outcome.refused.map(({ label, why }) => (
              <li key={label}>
                {label}: {why}.
              </li>
            ))}
          </ul>
        </Notice>
      )}
      <ErrorNotice error={error} title="The colours were not measured" />
    </div>
  );
}

function tried(work: () => MeasuredColour): MeasuredColour | string {
  try {
    return work();
  } catch (error) {
    return messageOf(error);
  }
}

/** The service takes lists that may change; the domain's may not. */
const kept = (found: MeasuredColour, { id, caption }: Picture) => ({
  ...(structuredClone(found) as typeof found & {
    grey: { outline: [number, number][]; reflectance: number };
  }),
  lab: [...found.lab] as [number, number, number],
  spread: [...found.spread] as [number, number, number],
  error: found.error && ([...found.error] as [number, number, number]),
  cautions: [...found.cautions],
  ...{ picture: id, pictureCaption: caption },
});
