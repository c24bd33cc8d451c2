import { keepPreviousData, useMutation, useQuery } from '@tanstack/react-query';
import type { FiringChange, NewFiring } from '../../api/contract/firing.ts';
import type { NotebookQuery } from '../../api/contract/notebook.ts';
import type { NewPlan, TilesOfPlan } from '../../api/contract/plan.ts';
import type { NewTile, TileChange, ZoneChange } from '../../api/contract/tile.ts';
import type { ChanceAsked, NextTileAsked, TrialAsked } from '../../api/contract/trial.ts';
import { answer, api } from '../client.ts';
import { asQuery } from './specimens.ts';
import { underStudy, useRefresh } from './studies.ts';

const { firings, tiles, trials, plans, notebook } = api.studies[':study'];
const oneFiring = firings[':firing'];
const oneTile = tiles[':tile'];
const onePlan = plans[':plan'];

export function useFirings(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'firings'),
    queryFn: () => answer(firings.$get({ param: { study } })),
  });
}
/** Without readings: phones may have sent some since the form was opened, and it holds none of them. */
export type FiringWish = Pick<NewFiring, 'name'> & Omit<FiringChange, 'name'>;

/** Makes a firing, or changes one when an id is given. */
export function useSaveFiring(study: string, firing: string | null) {
  return useMutation({
    mutationFn: (json: FiringWish) =>
      firing === null
        ? answer(firings.$post({ param: { study }, json }))
        : answer(oneFiring.$patch({ param: { study, firing }, json })),
    // Refused too: then the firing is not as this page has it.
    onSettled: useRefresh(study),
  });
}
export function useDeleteFiring(study: string) {
  return useMutation({
    mutationFn: (firing: string) => answer(oneFiring.$delete({ param: { study, firing } })),
    onSuccess: useRefresh(study),
  });
}

export function useTiles(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'tiles'),
    queryFn: () => answer(tiles.$get({ param: { study } })),
  });
}
export function useTile(study: string, tile: string) {
  return useQuery({
    queryKey: underStudy(study, 'tile', tile),
    queryFn: () => answer(oneTile.$get({ param: { study, tile } })),
  });
}
export function useMakeTile(study: string) {
  return useMutation({
    mutationFn: (json: NewTile) => answer(tiles.$post({ param: { study }, json })),
    onSuccess: useRefresh(study),
  });
}
export function useChangeTile(study: string, tile: string) {
  return useMutation({
    mutationFn: (json: TileChange) => answer(oneTile.$patch({ param: { study, tile }, json })),
    onSuccess: useRefresh(study),
  });
}
export function useChangeZone(study: string, tile: string) {
  return useMutation({
    mutationFn: ({ zone, change }: { zone: string; change: ZoneChange }) =>
      answer(oneTile.zones[':zone'].$patch({ param: { study, tile, zone }, json: change })),
    onSuccess: useRefresh(study),
  });
}
export function useDeleteTile(study: string) {
  return useMutation({
    mutationFn: (tile: string) => answer(oneTile.$delete({ param: { study, tile } })),
    onSuccess: useRefresh(study),
  });
}

export function useFactors(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'factors'),
    queryFn: () => answer(trials.factors.$get({ param: { study } })),
  });
}
export function useAnalysis(study: string, json: TrialAsked) {
  return useQuery({
    queryKey: underStudy(study, 'trial', json),
    queryFn: () => answer(trials.analysis.$post({ param: { study }, json })),
    placeholderData: keepPreviousData,
    enabled: json.factors.length > 0,
  });
}
export function useChance(study: string, json: ChanceAsked) {
  return useQuery({
    queryKey: underStudy(study, 'chance', json),
    queryFn: () => answer(trials.chance.$post({ param: { study }, json })),
    placeholderData: keepPreviousData,
    enabled: json.factors.length > 0,
  });
}

export function usePlans(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'plans'),
    queryFn: () => answer(plans.$get({ param: { study } })),
  });
}
export function usePlan(study: string, plan: string) {
  return useQuery({
    queryKey: underStudy(study, 'plan', plan),
    queryFn: () => answer(onePlan.$get({ param: { study, plan } })),
  });
}
export function useMakePlan(study: string) {
  return useMutation({
    mutationFn: (json: NewPlan) => answer(plans.$post({ param: { study }, json })),
    onSuccess: useRefresh(study),
  });
}
export function useTilesOfPlan(study: string, plan: string) {
  return useMutation({
    mutationFn: (json: TilesOfPlan) => answer(onePlan.tiles.$post({ param: { study, plan }, json })),
    onSuccess: useRefresh(study),
  });
}
export function useDeletePlan(study: string) {
  return useMutation({
    mutationFn: (plan: string) => answer(onePlan.$delete({ param: { study, plan } })),
    onSuccess: useRefresh(study),
  });
}

export function useNotebook(study: string, wishes: NotebookQuery) {
  const query = asQuery(wishes);
  return useQuery({
    queryKey: underStudy(study, 'notebook', query),
    queryFn: () => answer(notebook.$get({ param: { study }, query })),
    placeholderData: keepPreviousData,
  });
}

export function useNextTile(study: string) {
  return useMutation({
    mutationFn: (json: NextTileAsked) => answer(trials.next.$post({ param: { study }, json })),
  });
}
