import { useState } from 'react';
import type { Picture } from '../../../../api/contract/picture.ts';
import type { Tile } from '../../../../api/contract/tile.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import { pictureUrl } from '../../../queries/pictures.ts';
import { Board } from './Board.tsx';
import { GreyFields } from './GreyFields.tsx';
import { MeasureColours } from './MeasureColours.tsx';
import { altOf } from './PictureList.tsx';
import { choicesOf, GREY, NEW_ZONE, shapesOf, useOutlining } from './useOutlining.ts';

const DRAW = 'draw-an-outline';
/** The drawing area goes away; whoever drew by keys goes on where they began. */
function back(leave: () => void) {
  leave();
  setTimeout(() => document.getElementById(DRAW)?.focus());
}

/** One picture: outlines drawn on it, the grey patch, and the colours measured from it. */
export function PictureWork(at: {
  readonly study: string;
  readonly tile: Tile;
  readonly picture: Picture;
  readonly onOpen: (zone: string) => void;
}) {
  const { study, tile, picture } = at;
  const work = useOutlining(study, { tile, picture });
  const [shown, setShown] = useState(true);
  const taken = work.target === NEW_ZONE && tile.zones.some((zone) => zone.label === work.label.trim());
  const name = work.target === GREY ? 'the grey patch' : `zone ${work.label}`;
  return (
    <div className="picture-board">
      <Board
        picture={picture}
        url={pictureUrl(study, picture.id)}
        alt={altOf(picture, tile.label)}
        shapes={shown ? shapesOf(tile, picture) : []}
        onChoose={at.onOpen}
        drawing={work.drawing ? name : null}
        onDrawn={(outline) => back(() => work.keep(outline))}
        onLeave={() => back(work.stop)}
      />
      <Key />
      <Tick isSelected={shown} onChange={setShown}>
        Show the outlines
      </Tick>
      <div className="row base">
        <Select
          label="Outline"
          choices={choicesOf(tile, picture)}
          value={work.target}
          onChange={work.choose}
          isDisabled={work.drawing}
        />
        {work.target === NEW_ZONE && (
          <Field
            label="Its name"
            value={work.label}
            onChange={work.name}
            isDisabled={work.drawing}
            maxLength={20}
            wrong={taken ? `A zone ${work.label.trim()} is there already.` : null}
          />
        )}
        <Button
          id={DRAW}
          look="primary"
          onPress={work.start}
          isDisabled={work.drawing || work.label.trim() === '' || taken}
          isPending={work.busy}
        >
          Draw it
        </Button>
      </div>
      {work.target === GREY && (
        <GreyFields study={study} picture={picture} reflectance={work.reflectance} onChange={work.reflect} />
      )}
      <ErrorNotice error={work.error} title="The outline was not kept" />
      <MeasureColours study={study} tile={tile} picture={picture} />
    </div>
  );
}

function Key() {
  return (
    <ul className="key-to-gloss small faint" aria-label="What the patterns mean">
      <li>Dots: matt</li>
      <li>Lines: satin</li>
      <li>Crossed lines, thick edge: glossy</li>
      <li>Dashed: not judged</li>
      <li>Dotted: grey patch</li>
    </ul>
  );
}
