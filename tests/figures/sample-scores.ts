import { randomLcg, randomNormal } from 'd3';
import type { ScoresData, ScoresGroup } from '../../api/figures/scores-data.ts';

export interface Wish {
  readonly groups: number;
  readonly each: number;
  readonly replicas: number;
  readonly seed?: number;
}

/** Invented scores, the same for the same wish: some ware groups of normal scatter, and replicas among them. */
export function sampleScores({ groups, each, replicas, seed = 0.42 }: Wish): ScoresData {
  const random = randomLcg(seed);
  const normal = randomNormal.source(random)(0, 1);
  const wares: ScoresGroup[] = Array.from({ length: groups }, (_, g) => {
    const centre = [4 * Math.cos((g * 2.4) % 6.28), 2.5 * Math.sin((g * 2.4) % 6.28)] as const;
    const points = Array.from({ length: each }, (_, i) => {
      const [u, v] = [normal(), normal()];
      return { id: `g${g}s${i}`, label: `S-${g}${i}`, x: centre[0] + u, y: centre[1] + 0.5 * v + 0.4 * u };
    });
    const ellipse = { centre, semiAxes: [2.6, 1.1], angle: 0.42 } as const;
    return { id: `g${g}`, name: `Ware ${g + 1}`, slot: g, n: each, points, ellipse };
  });
  return {
    id: 'scores',
    title: 'Scores of the sample',
    components: [0, 1],
    explained: [0.624, 0.183],
    groups: wares,
    replicas: Array.from({ length: replicas }, (_, i) => ({
      ...{ id: `r${i}`, label: `Tile ${i + 1}`, x: 3 * normal(), y: 2 * normal() },
      chosen: i === 0,
    })),
    loadings: ['SiO2', 'PbO', 'Al2O3', 'Fe2O3', 'MnO', 'CaO'].map((part, i) => ({
      ...{ part, x: Math.cos(i) * 0.5, y: Math.sin(i) * (0.2 + 0.1 * i) },
    })),
    level: 0.95,
    naming: 'replicas',
    view: null,
  };
}
