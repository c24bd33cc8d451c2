import type { ReactNode } from 'react';
import type { SharedOf } from '../../../../api/contract/shared.ts';
import { Button } from '../../../parts/Button.tsx';
import { CsvDownload, saveFile } from '../../../parts/CsvDownload.tsx';
import { DoiLink } from '../../../parts/DoiLink.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Chance } from '../../fire/trial/ChanceSection.tsx';
import { Found } from '../../fire/trial/MatteredPage.tsx';
import { SharedNotice } from './SharedNotice.tsx';
import '../../fire/fire.css';

type Shared = SharedOf<'outcome'>;

/** What mattered, as somebody shared it. */
export default function SharedOutcome(at: { readonly shared: Shared; readonly children?: ReactNode }) {
  const { shared } = at;
  const { name, analysis, curve, words } = shared;
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
      <Data shared={shared} />
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

function Data({ shared }: { readonly shared: Shared }) {
  const { analysis, zones } = shared;
  const factors = [...new Set(zones.flatMap((zone) => Object.keys(zone.factors)))];
  return (
    <section className="stack" aria-labelledby="tables-heading">
      <h2 id="tables-heading">Data as files</h2>
      <div className="row">
        <CsvDownload
          name="zones"
          label="Zones as CSV"
          header={['tile', 'zone', 'gloss', 'share glassy', ...factors]}
          rows={() =>
            zones.map((zone) => [
              ...[zone.tile, zone.label, zone.grade, zone.glassyShare],
              ...factors.map((factor) => zone.factors[factor] ?? null),
            ])
          }
        />
        <CsvDownload
          name="effects"
          label="Effects as CSV"
          header={['factor', 'contrast', 'scale', 'effect', 'low', 'high', 'level', 'p', 'method', 'verdict']}
          rows={() =>
            analysis.effects.map((one) => [
              ...[one.factor, one.contrast, one.scale, one.estimate, one.low, one.high],
              ...[one.level, one.p, one.method, one.verdict],
            ])
          }
        />
        <Button
          look="quiet"
          onPress={() => saveFile('shared.json', JSON.stringify(shared, null, 1), 'application/json')}
        >
          Everything as JSON
        </Button>
      </div>
    </section>
  );
}
