import type { ReactNode } from 'react';
import { DoiLink } from '../../../parts/DoiLink.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Chance } from '../../fire/trial/ChanceSection.tsx';
import { Found } from '../../fire/trial/MatteredPage.tsx';
import { hasPlace, TRIAL_FILES, ZonesFigure } from '../../fire/trial/TrialFigures.tsx';
import { FigureFilesOf } from '../FigureFiles.tsx';
import { DataFiles, figuresFrom, type OfShare } from './DataFiles.tsx';
import { SharedNotice } from './SharedNotice.tsx';
import '../../fire/fire.css';

/** What mattered, as somebody shared it. */
export default function SharedOutcome(at: OfShare<'outcome'> & { readonly children?: ReactNode }) {
  const { shared, files } = at;
  const { name, analysis, curve, tiles, words } = shared;
  const drawn = {
    zones: tiles?.some(hasPlace) ?? false,
    effects: analysis.effects.length > 0,
    chance: curve !== null,
  };
  return (
    <>
      <PageHead title={name} lead="What mattered, from zones of fired tiles." />
      <SharedNotice {...shared} />
      <Found found={analysis} />
      {curve && (
        <section className="stack" aria-labelledby="chance">
          <h2 id="chance">Chance of a glossy zone</h2>
          <Chance curve={curve} />
        </section>
      )}
      {drawn.zones && (
        <section className="stack" aria-labelledby="zones-lie">
          <h2 id="zones-lie">The zones as they lie</h2>
          <ZonesFigure tiles={tiles!} />
        </section>
      )}
      <FigureFilesOf figures={TRIAL_FILES.filter(({ id }) => drawn[id])} from={figuresFrom(files)} />
      <DataFiles shared={shared} files={files} />
      <section className="stack" aria-labelledby="words-heading">
        <h2 id="words-heading">Methods and sources</h2>
        <p>{words.methods}</p>
        <ul>
          {words.references.map(({ text, doi }) => (
            <li key={text}>
              {text} <DoiLink doi={doi} />
            </li>
          ))}
        </ul>
      </section>
      {at.children}
    </>
  );
}
