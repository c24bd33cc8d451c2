import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Select } from '../../../parts/Select.tsx';
import type { PageProps } from '../../../paths.ts';
import { useFirings, useTiles } from '../../../queries/fire.ts';
import { firePath, phoneSheetPath } from '../paths.ts';
import { PaperSheet } from './PaperSheet.tsx';
import { SheetLink } from './SheetLink.tsx';
import './paper.css';

/** Before the fire is lit: which firing the sheet is for, and how it gets to the phone. */
export function SheetPage({ study }: PageProps) {
  const firings = useFirings(study);
  return (
    <>
      <div className="no-print">
        <PageHead
          title="At the fire"
          lead="A sheet for the phone: when it was lit, the air, readings, and the gloss of each zone. It works out of reach of any network, and sends what was noted later."
        />
      </div>
      <Loaded query={firings} what="the firings">
        {(all) =>
          all.length === 0 ? (
            <EmptyState
              title="No firing to note things for"
              actions={<LinkButton to={firePath(study, '/firings')}>To the firings</LinkButton>}
            >
              <p>Record the firing first; its name is enough.</p>
            </EmptyState>
          ) : (
            <Choice study={study} firings={all} />
          )
        }
      </Loaded>
      <div className="no-print">
        <Cautions hazards={['fire', 'lead']} folded />
      </div>
    </>
  );
}

function Choice({ study, firings }: { readonly study: string; readonly firings: readonly FiringRecord[] }) {
  const tiles = useTiles(study);
  const [picked, setPicked] = useState(() => new URLSearchParams(location.search).get('firing'));
  const firing = firings.find((one) => one.id === picked) ?? firings.at(-1)!;
  return (
    <>
      <div className="sheet-ways no-print">
        <div className="tile-firing">
          <Select
            label="Firing"
            choices={firings.map((one) => ({ id: one.id, label: one.name }))}
            value={firing.id}
            onChange={setPicked}
          />
        </div>
        <section className="stack" aria-labelledby="here">
          <h2 id="here">On this computer</h2>
          <div className="row">
            <LinkButton look="primary" to={phoneSheetPath(study, firing.id)}>
              Open the sheet here
            </LinkButton>
          </div>
        </section>
        <SheetLink key={firing.id} study={study} firing={firing} />
        <section className="stack" aria-labelledby="paper">
          <h2 id="paper">On paper</h2>
          <p>Blanks for times, air and readings, and each tile’s zones where they lie, with boxes to tick.</p>
          <div className="row">
            <Button onPress={() => window.print()}>Print the sheet</Button>
          </div>
        </section>
      </div>
      <PaperSheet firing={firing} tiles={(tiles.data ?? []).filter((tile) => tile.firing === firing.id)} />
    </>
  );
}
