import { useMemo, useState } from 'react';
import type { Tile } from '../../../../api/contract/tile.ts';
import type { FoundFactor, TrialAsked } from '../../../../api/contract/trial.ts';
import type { Outcome } from '../../../../api/domain/trials/types.ts';
import { useFactors, useTiles } from '../../../queries/fire.ts';

/** To start with: one thing set on zones and one on tiles; the reader adds the rest. */
const FIRST = 2;

export interface TrialChoice {
  readonly found: readonly FoundFactor[];
  readonly chosen: readonly string[];
  readonly toggle: (name: string, on: boolean) => void;
  readonly outcome: Outcome;
  readonly setOutcome: (outcome: Outcome) => void;
  readonly asked: TrialAsked;
  /** Tiles that can be looked at, and those left out of it by hand. */
  readonly tiles: readonly Tile[];
  readonly without: readonly string[];
  readonly setWithout: (tiles: readonly string[]) => void;
}

/** Which factors and which outcome are looked at; shared by what mattered and by the next tile. */
export function useTrial(study: string) {
  const query = useFactors(study);
  const [picked, setPicked] = useState<readonly string[] | null>(null);
  const [outcome, setOutcome] = useState<Outcome>('glossy');
  const [without, setWithout] = useState<readonly string[]>([]);
  const all = useTiles(study).data;
  const choice = useMemo((): TrialChoice => {
    const found = query.data ?? [];
    const chosen = picked ?? startOf(found);
    const tiles = all ?? [];
    const kept = tiles.map(({ id }) => id).filter((id) => !without.includes(id));
    const factors = found.filter((one) => chosen.includes(one.factor.name)).map((one) => one.factor);
    return {
      ...{ found, chosen, outcome, setOutcome, tiles, without, setWithout },
      toggle: (name, on) => setPicked(on ? [...chosen, name] : chosen.filter((one) => one !== name)),
      asked: {
        ...{ factors, outcome, level: 0.95, seed: 1 },
        ...(kept.length < tiles.length ? { tiles: kept } : {}),
      },
    };
  }, [query.data, picked, outcome, all, without]);
  return { query, choice };
}

const startOf = (found: readonly FoundFactor[]): string[] => {
  const varied = found.filter((one) => one.values.length > 1 && one.factor.name !== 'batch');
  const names = varied.map((one) => one.factor.name);
  return names.filter((name) => name !== 'thickness' || !names.includes('coats')).slice(0, FIRST);
};
