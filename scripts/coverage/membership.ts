import type { Sample } from '../../api/domain/composition/types.ts';
import { placeSample } from '../../api/domain/placement/place.ts';
import { fitReference } from '../../api/domain/reference/fit.ts';
import type { CovarianceChoice } from '../../api/domain/reference/types.ts';
import { fractionFromBatch } from '../../api/domain/slip/batch-fraction.ts';
import { fractionsFromGroup } from '../../api/domain/slip/group-fraction.ts';
import { drawOffSample } from '../../api/domain/slip/sample.ts';
import { fractionFromTracers } from '../../api/domain/slip/tracers.ts';
import type { Analysed } from '../../api/domain/slip/types.ts';
import { fitUptake } from '../../api/domain/slip/uptake.ts';
import { fractionFromThickness } from '../../api/domain/slip/uptake-apply.ts';
import { UPTAKE_LAWS } from '../../api/domain/slip/uptake-law.ts';
import { type RandomStream, randomStream } from '../../api/domain/statistics/random.ts';
import { LABORATORIES, predicted } from './fractions.ts';
import { uniformity } from './kolmogorov.ts';
import { analysed, type Composition, mixed, OXIDES, PAINT, remade, SLIP } from './world.ts';

/** How the slip of the references and of the tile was treated. */
export type Treatment = 'none' | 'tracers' | 'group' | 'thickness' | 'batch' | 'left in';
export interface Uniformity {
  readonly references: Treatment;
  readonly tile: Treatment;
  readonly n: number;
  readonly groups: number;
  readonly d: number;
  readonly p: number;
  /** Share of true members with p < .05. */
  readonly below05: number;
}

const PARTS = ['PbO', 'SiO2', 'MnO', 'Fe2O3'];
const leaveOut = OXIDES.filter((oxide) => !PARTS.includes(oxide));
const LAB = LABORATORIES['σ stated, 3 %']!;
const DEPTH = 12;

/** A piece made to the group's recipe, as it was, as it was read, and its slip as read. */
interface Piece {
  readonly paint: Composition;
  readonly measured: Analysed;
  readonly slip: Analysed;
  readonly thickness: number;
}

function piece(random: RandomStream, blurred: boolean): Piece {
  const [paint, slip] = [remade(PAINT, 0.15, random), remade(SLIP, 0.05, random)];
  const thickness = 12 + 40 * random.uniform();
  const f = blurred ? UPTAKE_LAWS['dissolved layer'].fraction(thickness, DEPTH) : 0;
  return {
    paint,
    measured: analysed(mixed(paint, slip, f), LAB, random),
    slip: analysed(slip, LAB, random),
    thickness: thickness + 1.5 * random.normal(),
  };
}

/** The fractions of some pieces by one treatment. */
function fractions(pieces: readonly Piece[], by: Treatment, random: RandomStream): number[] {
  if (by === 'none' || by === 'left in') return pieces.map(() => 0);
  if (by === 'tracers')
    return pieces.map(({ measured, slip }) => fractionFromTracers(measured, slip, ['TiO2', 'Al2O3']).f);
  if (by === 'batch')
    return pieces.map(
      ({ measured, slip, paint }) => fractionFromBatch(measured, predicted(paint, random), { slip }).f,
    );
  if (by === 'group') {
    const [paints, slips] = [pieces.map((x) => x.measured), pieces.map((x) => x.slip)];
    return fractionsFromGroup({ paints, slips, known: { TiO2: 0, Al2O3: 0 } }).estimates.map(
      (e) => e.estimate.f,
    );
  }
  const tiles = Array.from({ length: 12 }, (_, k) => {
    const t = 10 + 4 * k;
    const f = UPTAKE_LAWS['dissolved layer'].fraction(t, DEPTH) + 0.012 * random.normal();
    return { label: `${k}`, thickness: t, thicknessSigma: 1, f, sigma: 0.012 };
  });
  const uptake = fitUptake(tiles, 'dissolved layer');
  return pieces.map(({ thickness }) => fractionFromThickness(uptake, { thickness, sigma: 1.5 }).f);
}

function sampleOf(one: Piece, f: number, role: Sample['role'], id: string): Sample {
  const sample: Sample = {
    id,
    group: role === 'reference' ? 'g' : null,
    role,
    measured: 'paint',
    rawTotal: 100,
    ...one.measured,
    label: id,
  };
  return f > 0 ? drawOffSample(sample, one.slip, { f, leaveOut }).sample : sample;
}

interface Setting {
  readonly n: number;
  readonly references: Treatment;
  readonly tile: Treatment;
  readonly groups: number;
  readonly covariance: CovarianceChoice;
}

function membershipOf({ n, references, tile, covariance }: Setting, random: RandomStream): number | null {
  const blurred = references !== 'none';
  const members = Array.from({ length: n }, () => piece(random, blurred));
  const one = piece(random, blurred);
  const f = fractions(members, references, random);
  const [own] = fractions([one], tile, random);
  const samples = members.map((m, i) => sampleOf(m, f[i]!, 'reference', `s${i}`));
  const settings = {
    groups: ['g'],
    parts: PARTS,
    scale: 'log-ratio' as const,
    covariance,
    replacement: { fraction: 0.65, limits: {} },
  };
  const model = fitReference(samples, settings, { g: 'g' });
  return placeSample(model, sampleOf(one, own!, 'replica', 'tile')).groups[0]!.membership;
}

/** Membership p of true members of groups of n, over many groups. */
export function measureUniformity(setting: Setting): Uniformity {
  const random = randomStream(20261126);
  const all = Array.from({ length: setting.groups }, () => membershipOf(setting, random));
  const found = all.filter((p) => p !== null);
  const { references, tile, n, groups } = setting;
  const below05 = found.filter((p) => p < 0.05).length / found.length;
  return { references, tile, n, groups, ...uniformity(found), below05 };
}

export function* allUniformity(groups: number): Generator<Uniformity> {
  const pairs: readonly [Treatment, Treatment][] = [
    ['none', 'none'],
    ['left in', 'left in'],
    ['tracers', 'tracers'],
    ['group', 'tracers'],
    ['tracers', 'batch'],
    ['thickness', 'thickness'],
    ['thickness', 'batch'],
    ['left in', 'tracers'],
  ];
  for (const [references, tile] of pairs)
    for (const n of [6, 12, 40])
      yield measureUniformity({ references, tile, n, groups, covariance: { kind: 'sample' } });
}
