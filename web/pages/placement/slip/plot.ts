import type { ScoresData, ScoresReplica } from '../../../../api/figures/scores-data.ts';
import type { Drawn } from './drawn.ts';
import { isOf } from './drawn.ts';
import type { Live } from './placer.ts';

/** What lies over the plain plot: replicas where they are now, the way of the chosen one, and its cloud. */
export interface Over {
  readonly live: Live | null;
  readonly drawn: Drawn | null;
}

export function withSlip(data: ScoresData, { live, drawn }: Over): ScoresData {
  if (live === null) return data;
  return {
    ...data,
    replicas: data.replicas.map((replica) => moved(replica, data.components, { live, drawn })),
  };
}

type Pair = ScoresData['components'];
const pairOf = (scores: readonly number[], [i, j]: Pair) => [scores[i] ?? 0, scores[j] ?? 0] as const;

function moved(replica: ScoresReplica, at: Pair, { live, drawn }: Over): ScoresReplica {
  const now = live?.byId.get(replica.id);
  if (now === undefined) return replica;
  const [x, y] = pairOf(now.placement.scores, at);
  const here = { ...replica, x, y };
  if (!replica.chosen) return here;
  const path = now.reach?.path.map(({ scores }) => pairOf(scores, at));
  const cloud =
    drawn && isOf(drawn, now) ? drawn.answer.scores.some.map((scores) => pairOf(scores, at)) : null;
  return { ...here, ...(path ? { path } : {}), ...(cloud ? { cloud } : {}) };
}
