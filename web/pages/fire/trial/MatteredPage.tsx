import { useState } from 'react';
import type { TrialAnswer } from '../../../../api/contract/trial.ts';
import { effectInFigures } from '../../../../api/domain/trials/effect-size.ts';
import { leftOutInWords } from '../../../../api/domain/trials/left-out-words.ts';
import { fromFirings } from '../../../../api/domain/trials/tile-words.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Notice, Tag } from '../../../parts/Notice.tsx';
import { count, showSignificant } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { useAnalysis } from '../../../queries/fire.ts';
import { ShareThis } from '../../share/ShareThis.tsx';
import { firePath } from '../paths.ts';
import { ChanceSection } from './ChanceSection.tsx';
import { TrialChoices } from './TrialChoices.tsx';
import { EffectsFigure, TrialFiles, ZonesSection } from './TrialFigures.tsx';
import { type TrialChoice, useTrial } from './useTrial.ts';

/** Which factor made the glaze, and which cannot be told apart. */
export function MatteredPage({ study }: PageProps) {
  const { query, choice } = useTrial(study);
  return (
    <>
      <PageHead
        title="What mattered"
        lead="Why did the paint go glassy only in places? Each factor’s effect with its interval, from the zones of your tiles."
        actions={
          <LinkButton to={firePath(study, '/next')} look="primary">
            Suggest the next tile
          </LinkButton>
        }
      />
      <Loaded query={query} what="what was varied">
        {(found) =>
          found.length === 0 ? (
            <EmptyState
              title="Nothing was varied yet"
              actions={<LinkButton to={firePath(study)}>Tiles</LinkButton>}
            >
              <p>
                Write down coats or thickness and the gloss of each zone; then this page has something to say.
              </p>
            </EmptyState>
          ) : (
            <Analysis study={study} choice={choice} />
          )
        }
      </Loaded>
    </>
  );
}

function Analysis({ study, choice }: { readonly study: string; readonly choice: TrialChoice }) {
  const { asked } = choice;
  const analysis = useAnalysis(study, asked);
  const [wanted, setAgainst] = useState<string | null>(null);
  const bare = asked.tiles?.length === 0;
  const names = bare ? [] : asked.factors.map((one) => one.name);
  const against = wanted !== null && names.includes(wanted) ? wanted : (names[0] ?? '');
  return (
    <>
      <TrialChoices choice={choice} />
      {names.length === 0 ? (
        <Notice>Choose at least one {bare ? 'tile' : 'factor'}.</Notice>
      ) : (
        <Loaded query={analysis} what="what mattered">
          {(found) => <Found found={found} />}
        </Loaded>
      )}
      {names.length > 0 && asked.outcome !== 'share' && (
        <ChanceSection study={study} asked={asked} against={against} onAgainst={setAgainst} />
      )}
      <ZonesSection study={study} without={choice.without} />
      {names.length > 0 && <TrialFiles study={study} asked={asked} against={against} />}
      {names.length > 0 && (
        <ShareThis
          study={study}
          seen="The visitor sees this answer and what was left out of it, the zones it rests on as they lie, with their gloss and the factors chosen here, methods and sources, as they are now; no other setting and nothing else of the study."
          wish={(terms) => ({
            ...{ kind: 'outcome', name: `What mattered: ${names.join(', ')}` },
            ...{ trial: asked, against, ...terms },
          })}
        />
      )}
    </>
  );
}

export function Found({ found }: { readonly found: TrialAnswer }) {
  const { counts } = found;
  return (
    <>
      <section className="stack" aria-label="The answer">
        <p className="answer">{found.sentence}</p>
        <p className="faint">
          {count(found.zones, 'zone')} of {count(found.tiles, 'tile')}
          {fromFirings(found.firings)}: {counts.matt} matt, {counts.satin} satin, {counts.glossy} glossy.
        </p>
        {found.tangles.length > 0 && (
          <Notice kind="caution" title="What cannot be told apart">
            <ul>
              {found.tangles.map((one) => (
                <li key={one.sentence}>{one.sentence}</li>
              ))}
            </ul>
          </Notice>
        )}
        {found.cautions.map((words) => (
          <Notice key={words}>{words}</Notice>
        ))}
      </section>
      <section className="stack" aria-labelledby="effects">
        <h2 id="effects">Factor by factor</h2>
        <EffectsFigure found={found} />
        <DataTable
          label="Effects"
          columns={COLUMNS}
          rows={found.effects}
          rowKey={(row) => `${row.factor} ${row.contrast}`}
        />
      </section>
      {found.leftOut.length > 0 && (
        <section className="stack" aria-labelledby="left-out">
          <h2 id="left-out">Zones left out</h2>
          <ul>
            {leftOutInWords(found.leftOut).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

type Effect = TrialAnswer['effects'][number];
const KIND = { matters: 'done', 'no sign': 'plain', 'cannot tell': 'caution' } as const;
const COLUMNS: readonly Column<Effect>[] = [
  {
    id: 'factor',
    label: 'Factor',
    header: true,
    cell: (row) => `${row.factor}, ${row.contrast}`,
  },
  { id: 'verdict', label: 'Verdict', cell: (row) => <Tag kind={KIND[row.verdict]}>{row.verdict}</Tag> },
  {
    id: 'sentence',
    label: 'In words',
    prose: true,
    cell: (row) => (
      <>
        {row.sentence}
        {row.cautions.map((words) => (
          <span key={words} className="hint small">
            {' '}
            {words}
          </span>
        ))}
      </>
    ),
  },
  { id: 'effect', label: 'Effect and interval', numeric: true, cell: intervalInWords },
  { id: 'p', label: 'p', numeric: true, cell: (row) => (row.p === null ? 'none' : pInWords(row.p)) },
];

const pInWords = (p: number) => (p < 0.001 ? '< 0.001' : showSignificant(p, 2));
function intervalInWords(effect: Effect): string {
  const unit = effect.scale === 'log-odds' ? 'odds ' : '';
  return `${unit}${effectInFigures(effect)}, ${Math.round(100 * effect.level)} % interval`;
}
