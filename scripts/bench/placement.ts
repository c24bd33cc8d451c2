/**
 * The domain's part of a comparison: 2,000 sherds in 10 groups with 12 oxides, 20 replicas. Wanted: a few tens of ms,
 * so that the whole API answer stays under 300 ms.
 */
import { clrInverse } from '../../api/domain/composition/log-ratio.ts';
import type { Sample } from '../../api/domain/composition/types.ts';
import { placeSample } from '../../api/domain/placement/place.ts';
import { fitReference } from '../../api/domain/reference/fit.ts';
import { leaveOneOut } from '../../api/domain/reference/leave-one-out.ts';
import { coordinatesOf } from '../../api/domain/reference/scale.ts';
import { distanceSquared, fitSpread } from '../../api/domain/reference/spread.ts';
import type { CovarianceChoice } from '../../api/domain/reference/types.ts';
import { randomStream } from '../../api/domain/statistics/random.ts';
import { bestTime, ms, report } from './time.ts';

const OXIDES = ['SiO2', 'Al2O3', 'Fe2O3', 'MgO', 'CaO', 'Na2O', 'K2O', 'TiO2', 'MnO', 'CuO', 'SnO2', 'PbO'];
const GROUPS = Array.from({ length: 10 }, (_, g) => `group ${g}`);

function makeSamples() {
  const { normal } = randomStream(2000);
  const centres = GROUPS.map(() => OXIDES.map(() => normal()));
  const draw = (id: string, g: number, role: Sample['role']): Sample => {
    const parts = clrInverse(centres[g]!.map((c, j) => c + 0.1 * (1 + j / 6) * normal()));
    const amount = (value: number) => ({
      value,
      limit: null,
      sigma: null,
      sigmaBasis: null,
      resolution: null,
    });
    const amounts = Object.fromEntries(OXIDES.map((oxide, j) => [oxide, amount(parts[j]!)]));
    const group = role === 'reference' ? GROUPS[g]! : null;
    return { id, label: id, group, role, measured: 'paint', spots: 1, rawTotal: 100, amounts };
  };
  const references = Array.from({ length: 2000 }, (_, i) => draw(`sherd ${i}`, i % 10, 'reference'));
  const replicas = Array.from({ length: 20 }, (_, i) => draw(`tile ${i}`, i % 10, 'replica'));
  return { references, replicas };
}

export async function bench(): Promise<void> {
  const { references, replicas } = makeSamples();
  const settingsFor = (covariance: CovarianceChoice) => ({
    groups: GROUPS,
    parts: null,
    scale: 'log-ratio' as const,
    covariance,
    replacement: { fraction: 0.65, limits: {} },
  });
  const fitWith = (covariance: CovarianceChoice) =>
    fitReference([...references, ...replicas], settingsFor(covariance), {});
  const model = fitWith({ kind: 'auto' });
  const fitting = await bestTime(9, () => fitWith({ kind: 'auto' }));
  const placing = await bestTime(9, () => replicas.map((tile) => placeSample(model, tile)));
  const shrinking = await bestTime(3, () => fitWith({ kind: 'shrinkage', target: 'oas' }));
  const members = await bestTime(1, () => references.map((sherd) => placeSample(model, sherd)));
  report('fit 2,000 sherds, 10 groups, 12 oxides', ms(fitting));
  report('place 20 replicas', `${ms(placing)} (${ms(placing / 20)} each)`);
  report('both, against the 300 ms of a whole answer', `${((fitting + placing) / 300).toFixed(2)} of it`);
  report('fit under shrinkage, every member left out by refitting', ms(shrinking));
  report('place all 2,000 members, each left out by refitting', ms(members));
  report('model and placements as JSON', `${(JSON.stringify(model).length / 1e6).toFixed(2)} MB`);

  const group = model.groups[0]!;
  const rows = model.members.filter((m) => m.group === group.id).map((m) => coordinatesOf(model, m.parts));
  const { axes, method } = group.spread!;
  const refitted = await bestTime(3, () =>
    rows.map((row, i) => distanceSquared(row, fitSpread(rows.toSpliced(i, 1), { axes, method }))),
  );
  const spread = fitSpread(rows, { axes, method });
  const closed = await bestTime(9, () => leaveOneOut(rows, spread));
  report(
    'leave one out of 200: refitting over closed form',
    `${(refitted / closed).toFixed(0)} times as long`,
  );
}
