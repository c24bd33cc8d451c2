import type { ReferenceModel } from '../../../../api/domain/reference/types.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import type { Settings } from '../settings.ts';
import { COVARIANCES, covarianceId, SCALES } from '../words.ts';
import { NumberBox } from './NumberBox.tsx';

export interface PartProps {
  readonly settings: Settings;
  readonly onChange: (change: Partial<Settings>) => void;
}

const wholeUpTo = (most: number) => (value: number) =>
  Number.isInteger(value) && value >= 1 && value <= most ? null : `needs a whole number from 1 to ${most}`;
const share = (value: number) => (value > 0 && value <= 1 ? null : 'needs a share above 0, up to 1');
const positive = (value: number) => (value > 0 ? null : 'needs a positive number');

/** The statistics, one step behind the plain words. */
export function ReckoningChoice(at: PartProps & { readonly model: ReferenceModel | undefined }) {
  const { settings, onChange, model } = at;
  const { covariance } = settings;
  return (
    <>
      <Select
        label="Scale"
        choices={SCALES}
        value={settings.scale}
        onChange={(scale) => onChange({ scale })}
      />
      <Select
        label="Spread of a group"
        choices={COVARIANCES}
        value={covarianceId(covariance)}
        onChange={(id) => onChange({ covariance: COVARIANCES.find((one) => one.id === id)!.choice })}
      />
      {covariance.kind === 'components' && (
        <NumberBox
          label="Number of components"
          value={covariance.count}
          fault={wholeUpTo(Math.max(1, model?.pca.eigenvalues.length ?? 50))}
          onChange={(count) => onChange({ covariance: { kind: 'components', count: count! } })}
        />
      )}
      <NumberBox
        label="Share of the detection limit"
        hint="What stands in for a value below detection. 0.65 of the limit is usual."
        value={settings.fraction}
        fault={share}
        onChange={(fraction) => onChange({ fraction: fraction! })}
      />
      <Limits {...at} />
    </>
  );
}

/** Detection limits by hand, for the oxides that were below one or lack one. */
function Limits({ settings, onChange, model }: PartProps & { readonly model: ReferenceModel | undefined }) {
  const unlimited = (model?.fallenOut ?? []).filter(({ because }) => because === 'no detection limit');
  const oxides = [
    ...new Set([
      ...Object.keys(settings.limits),
      ...Object.keys(model?.limits ?? {}),
      ...unlimited.map(({ oxide }) => oxide),
    ]),
  ];
  if (oxides.length === 0) return null;
  const change = (oxide: string, limit: number | null) => {
    const { [oxide]: _, ...rest } = settings.limits;
    onChange({ limits: limit === null ? rest : { ...rest, [oxide]: limit } });
  };
  return (
    <fieldset className="choices limits">
      <legend className="label">Detection limits by hand, wt%</legend>
      <p className="hint small faint">Leave empty to use what the laboratory reported.</p>
      {oxides.map((oxide) => {
        const reported = settings.limits[oxide] === undefined ? model?.limits[oxide] : undefined;
        return (
          <NumberBox
            key={oxide}
            label={showAnalyte(oxide)}
            {...(reported === undefined ? {} : { hint: `up to ${Number(reported.toPrecision(3))} reported` })}
            value={settings.limits[oxide] ?? null}
            fault={positive}
            optional
            onChange={(limit) => change(oxide, limit)}
          />
        );
      })}
    </fieldset>
  );
}
