import { useMemo, useState } from 'react';
import type { Sample } from '../../../../api/domain/composition/types.ts';
import { slipFor } from '../../../../api/domain/slip/slip-source.ts';
import { mixingCaption } from '../../../../api/figures/captions-slip.ts';
import { type MixingData, mixingData } from '../../../../api/figures/mixing-data.ts';
import { mixingHeight, mixingLine } from '../../../../api/figures/mixing-line.ts';
import { CaptionedFigure } from '../../../parts/figure/CaptionedFigure.tsx';
import { FileChoices, type FileSheet } from '../../../parts/figure/FileChoices.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { slipFigure } from '../../../queries/figures.ts';
import type { SlipSectionProps } from './section-props.ts';
import { useNow } from './useSlip.ts';

/** Slip, paint and what is left of it on two oxides, as the slider stands now. */
export function LineSection(at: SlipSectionProps) {
  const { slip, result, replica } = at;
  const choice = useNow(slip, replica.id, (now) => now?.choice ?? null);
  const [oxides, setOxides] = useState<readonly [string, string] | null>(null);
  const made = useMemo((): { data: MixingData } | { refusal: string } => {
    const samples = result.replicas as readonly Sample[];
    const paint = samples.find(({ id }) => id === replica.id);
    if (!paint || choice === null) return { refusal: 'Choose a slip above, and its line is drawn here.' };
    try {
      const sides = {
        ...{ paint, slip: slipFor(choice.source, paint, slip.shelf), f: choice.f },
        others: samples.filter(({ id }) => id !== paint.id),
      };
      return { data: mixingData(sides, { id: 'mixing-line', oxides }) };
    } catch (error) {
      return { refusal: (error as Error).message };
    }
  }, [result, replica.id, choice, slip.shelf, oxides]);
  if ('refusal' in made)
    return (
      <Notice>
        <p>{made.refusal}</p>
      </Notice>
    );
  const { data } = made;
  const fetch = (file: string, sheet: FileSheet) =>
    slipFigure(slip.study, file as `line.svg`, {
      ...{ normalisation: result.request.normalisation, sheet, oxides: [...data.oxides] },
      fraction: result.request.settings.replacement.fraction,
      choice: { specimen: replica.id, source: choice!.source, f: choice!.f },
    });
  return (
    <div className="stack">
      <CaptionedFigure figure={mixingLine} height={mixingHeight} data={data} caption={mixingCaption(data)} />
      <OxidePair data={data} parts={result.model.parts} onChange={setOxides} />
      <FileChoices figures={[{ id: 'line', label: 'Mixing line' }]} from={{ fetch }} />
    </div>
  );
}

function OxidePair(at: {
  readonly data: MixingData;
  readonly parts: readonly string[];
  readonly onChange: (oxides: readonly [string, string]) => void;
}) {
  const [x, y] = at.data.oxides;
  const choices = (other: string) =>
    at.parts.filter((oxide) => oxide !== other).map((oxide) => ({ id: oxide, label: showAnalyte(oxide) }));
  return (
    <div className="look">
      <Select label="Across" choices={choices(y)} value={x} onChange={(oxide) => at.onChange([oxide, y])} />
      <Select label="Up" choices={choices(x)} value={y} onChange={(oxide) => at.onChange([x, oxide])} />
    </div>
  );
}
