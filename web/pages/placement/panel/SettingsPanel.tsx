import { useState } from 'react';
import type { Comparison } from '../../../../api/contract/placement.ts';
import type { Specimen } from '../../../../api/contract/specimen.ts';
import type { WareGroup } from '../../../../api/contract/ware-group.ts';
import { Button } from '../../../parts/Button.tsx';
import { count, showAnalyte } from '../../../parts/numbers.ts';
import { OneOf } from '../../../parts/Tick.tsx';
import { MEASURED_CHOICES } from '../../sherds/words.ts';
import { GroupMark } from '../GroupMark.tsx';
import { isUsual, USUAL } from '../settings.ts';
import { SCALES, sherds } from '../words.ts';
import { Fold } from './Fold.tsx';
import { LeftOutList } from './LeftOutList.tsx';
import { OxidesChoice } from './OxidesChoice.tsx';
import { type PartProps, ReckoningChoice } from './ReckoningChoice.tsx';
import { TickList } from './TickList.tsx';
import { WritingChoice } from './WritingChoice.tsx';

export interface SettingsPanelProps extends PartProps {
  readonly groups: readonly WareGroup[];
  readonly replicas: readonly Specimen[];
  /** The last answer, if any: it tells which oxides there are. */
  readonly comparison: Comparison | undefined;
  /** It answers settings from before: nothing of it may be said of those that stand here. */
  readonly stale: boolean;
}

/** What is compared with what, plain words first and the statistics a step behind. */
export function SettingsPanel(at: SettingsPanelProps) {
  const { settings, onChange, comparison } = at;
  const [open, setOpen] = useState(false);
  return (
    <aside className="sheet settings" aria-labelledby="compared">
      <div className="section-head">
        <h2 id="compared">What is compared</h2>
        <Button
          look="quiet"
          aria-expanded={open}
          aria-controls="settings-body"
          onPress={() => setOpen(!open)}
        >
          {open ? 'Close' : 'Change'}
        </Button>
      </div>
      <p className="settings-gist small faint">{gistOf(at)}</p>
      <div id="settings-body" className="stack settings-body" data-open={open}>
        <GroupsChoice {...at} />
        <OneOf
          label="What was measured"
          choices={MEASURED_CHOICES}
          value={settings.measured}
          onChange={(measured) => onChange({ measured })}
        />
        <Fold title="Replicas" gist={chosenOf(settings.replicas, at.replicas.length)}>
          <TickList
            label="Replicas placed"
            items={at.replicas.map(({ id, label }) => ({ id, label, name: label }))}
            chosen={settings.replicas}
            onChange={(replicas) => onChange({ replicas })}
            all="All replicas"
          />
        </Fold>
        {comparison && (
          <Fold title="Oxides" gist={at.stale ? '' : count(comparison.model.parts.length, 'oxide')}>
            <OxidesChoice
              known={comparison.model}
              chosen={settings.parts}
              onChange={(parts) => onChange({ parts })}
            />
          </Fold>
        )}
        <Fold title="How it is reckoned" gist={SCALES.find(({ id }) => id === settings.scale)!.label}>
          <ReckoningChoice settings={settings} onChange={onChange} model={comparison?.model} />
        </Fold>
        <Fold title="How oxides are written" gist={formsOf(at)}>
          <WritingChoice settings={settings} onChange={onChange} />
        </Fold>
        <LeftOutList settings={settings} onChange={onChange} />
        {!isUsual(settings) && (
          <div>
            <Button look="quiet" onPress={() => onChange(USUAL)}>
              Back to the usual settings
            </Button>
          </div>
        )}
      </div>
    </aside>
  );
}

const chosenOf = (chosen: readonly string[] | null, all: number) =>
  chosen === null ? `all ${all}` : `${chosen.length} of ${all}`;
const formsOf = ({ settings: { normalisation } }: SettingsPanelProps) =>
  [normalisation.iron, normalisation.manganese, normalisation.lead].map(showAnalyte).join(', ');

function gistOf({ settings, groups, replicas, stale, comparison: last }: SettingsPanelProps): string {
  const comparison = stale ? undefined : last;
  const measured = MEASURED_CHOICES.find(({ id }) => id === settings.measured)!.label;
  const placed = comparison ? comparison.placements.length : (settings.replicas?.length ?? replicas.length);
  const against = settings.groups?.length ?? groups.length;
  const oxides = comparison ? ` by ${count(comparison.model.parts.length, 'oxide')}` : '';
  return `${measured} of ${count(placed, 'replica')} against ${count(against, 'ware group')}${oxides}.`;
}

function GroupsChoice({ settings, onChange, groups, comparison, stale }: SettingsPanelProps) {
  const used = new Map(stale ? [] : comparison?.groups.map((group) => [group.id, group.used]));
  return (
    <TickList
      label="Ware groups"
      items={groups.map(({ id, name, position, specimens }) => ({
        id,
        name,
        label: (
          <>
            <GroupMark slot={position} /> {name}
          </>
        ),
        hint:
          used.has(id) && used.get(id) !== specimens
            ? `${used.get(id)} of ${sherds(specimens)}`
            : sherds(specimens),
      }))}
      chosen={settings.groups}
      onChange={(chosen) => onChange({ groups: chosen })}
      all="All ware groups"
    />
  );
}
