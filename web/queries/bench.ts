import { useMutation, useQuery } from '@tanstack/react-query';
import type { NewBatch, NewBlend } from '../../api/contract/batch.ts';
import type { NewMaterial } from '../../api/contract/material.ts';
import type { NewRoast } from '../../api/contract/roast.ts';
import { answer, api } from '../client.ts';
import { underStudy, useRefresh } from './studies.ts';

const ofStudy = api.studies[':study'];
const { materials, roasts, batches, blends } = ofStudy;
const oneMaterial = materials[':material'];
const oneRoast = roasts[':roast'];
const oneBatch = batches[':batch'];

export function useMaterials(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'materials'),
    queryFn: () => answer(materials.$get({ param: { study } })),
  });
}

/** Makes a material, or changes one when an id is given. */
export function useSaveMaterial(study: string, material: string | null) {
  return useMutation({
    mutationFn: (json: NewMaterial) =>
      material === null
        ? answer(materials.$post({ param: { study }, json }))
        : answer(oneMaterial.$patch({ param: { study, material }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteMaterial(study: string) {
  return useMutation({
    mutationFn: (material: string) => answer(oneMaterial.$delete({ param: { study, material } })),
    onSuccess: useRefresh(study),
  });
}

export function useRoasts(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'roasts'),
    queryFn: () => answer(roasts.$get({ param: { study } })),
  });
}

/** Makes a roast, or changes one when an id is given. */
export function useSaveRoast(study: string, roast: string | null) {
  return useMutation({
    mutationFn: (json: NewRoast) =>
      roast === null
        ? answer(roasts.$post({ param: { study }, json }))
        : answer(oneRoast.$patch({ param: { study, roast }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteRoast(study: string) {
  return useMutation({
    mutationFn: (roast: string) => answer(oneRoast.$delete({ param: { study, roast } })),
    onSuccess: useRefresh(study),
  });
}

export function useBatches(study: string) {
  return useQuery({
    queryKey: underStudy(study, 'batches'),
    queryFn: () => answer(batches.$get({ param: { study } })),
  });
}

/** Makes a batch, or changes one when an id is given. */
export function useSaveBatch(study: string, batch: string | null) {
  return useMutation({
    mutationFn: (json: NewBatch) =>
      batch === null
        ? answer(batches.$post({ param: { study }, json }))
        : answer(oneBatch.$patch({ param: { study, batch }, json })),
    onSuccess: useRefresh(study),
  });
}

export function useDeleteBatch(study: string) {
  return useMutation({
    mutationFn: (batch: string) => answer(oneBatch.$delete({ param: { study, batch } })),
    onSuccess: useRefresh(study),
  });
}

export function useSaveBlend(study: string) {
  return useMutation({
    mutationFn: (json: NewBlend) => answer(blends.$post({ param: { study }, json })),
    onSuccess: useRefresh(study),
  });
}
