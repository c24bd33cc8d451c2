import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { useFiring } from '../../../queries/firing-logs.ts';
import { firePath, phoneSheetPath } from '../paths.ts';
import { FiringPictures } from '../pictures/FiringPictures.tsx';
import { Curve } from './Curve.tsx';
import { FiringDialog } from './FiringDialog.tsx';
import { FiringFacts } from './FiringFacts.tsx';
import { inOneSentence } from './in-one-sentence.ts';
import { LogSection } from './LogSection.tsx';
import { LogTables } from './LogTables.tsx';
import { OpenAir } from './OpenAir.tsx';
import { Readings } from './Readings.tsx';
import { Thresholds } from './Thresholds.tsx';

/** One firing: in a sentence, its curve, what its log says, its readings. */
export function FiringPage({ study, firing }: { readonly study: string; readonly firing: string }) {
  const query = useFiring(study, firing);
  return (
    <>
      <Loaded query={query} what="the firing" page>
        {(found) => <Firing study={study} firing={found} />}
      </Loaded>
      <Cautions hazards={['fire', 'lead']} folded />
    </>
  );
}

function Firing({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const [changing, setChanging] = useState(false);
  const { summary } = firing;
  return (
    <>
      <PageHead
        title={firing.name}
        lead={inOneSentence(firing)}
        up={{ to: firePath(study, '/firings'), label: 'Firings' }}
        actions={
          <>
            <Button onPress={() => setChanging(true)}>Change</Button>
            <LinkButton to={phoneSheetPath(study, firing.id)}>Sheet for the phone</LinkButton>
          </>
        }
      />
      {summary && summary.flags.length > 0 && (
        <Notice kind="caution" title="Noticed in the log">
          <ul>
            {summary.flags.map((flag) => (
              <li key={flag.message}>{flag.message}</li>
            ))}
          </ul>
        </Notice>
      )}
      <OpenAir study={study} firing={firing} />
      <Curve study={study} firing={firing} />
      <section className="sheet stack" aria-labelledby="says">
        <h2 id="says">What the log says</h2>
        {summary ? (
          <LogTables summary={summary} />
        ) : (
          <p className="faint">No log yet: peak, time above temperatures and rates come from one.</p>
        )}
        <Thresholds key={firing.thresholds.join()} study={study} firing={firing} />
      </section>
      <LogSection study={study} firing={firing} />
      <Readings study={study} firing={firing} />
      <section className="sheet stack" aria-labelledby="pictures">
        <h2 id="pictures">Pictures</h2>
        <FiringPictures study={study} firing={firing.id} name={firing.name} />
      </section>
      <section className="sheet stack" aria-labelledby="about">
        <h2 id="about">About this firing</h2>
        <FiringFacts firing={firing} />
        {firing.note && <p className="lines">{firing.note}</p>}
      </section>
      <FiringDialog study={study} firing={changing ? firing : null} onClose={() => setChanging(false)} />
    </>
  );
}
