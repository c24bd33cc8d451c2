import { useMutation, useQuery } from '@tanstack/react-query';
import type { PictureChange } from '../../api/contract/picture.ts';
import type { NewZone } from '../../api/contract/tile.ts';
import { answer, api } from '../client.ts';
import { underStudy, useRefresh } from './studies.ts';

const { pictures, tiles } = api.studies[':study'];
const onePicture = pictures[':picture'];
const zones = tiles[':tile'].zones;

/** What a picture shows. */
export type PictureOf = { readonly tile: string } | { readonly firing: string };

/** Where the picture itself is. */
export const pictureUrl = (study: string, picture: string) =>
  `/api/studies/${study}/pictures/${picture}/file`;

export function usePictures(study: string, of: PictureOf) {
  return useQuery({
    queryKey: underStudy(study, 'pictures', of),
    queryFn: () => answer(pictures.$get({ param: { study }, query: of })),
  });
}
export function useSendPicture(study: string, of: PictureOf) {
  return useMutation({
    mutationFn: (file: File) =>
      answer(pictures.$post({ param: { study }, form: { ...of, file, caption: '' } })),
    onSuccess: useRefresh(study),
  });
}
export function useChangePicture(study: string) {
  return useMutation({
    mutationFn: ({ picture, change }: { picture: string; change: PictureChange }) =>
      answer(onePicture.$patch({ param: { study, picture }, json: change })),
    onSuccess: useRefresh(study),
  });
}
export function useDeletePicture(study: string) {
  return useMutation({
    mutationFn: (picture: string) => answer(onePicture.$delete({ param: { study, picture } })),
    onSuccess: useRefresh(study),
  });
}

export function useAddZone(study: string, tile: string) {
  return useMutation({
    mutationFn: (json: Pick<NewZone, 'label'> & Partial<NewZone>) =>
      answer(zones.$post({ param: { study, tile }, json })),
    onSuccess: useRefresh(study),
  });
}
export function useDeleteZone(study: string, tile: string) {
  return useMutation({
    mutationFn: (zone: string) => answer(zones[':zone'].$delete({ param: { study, tile, zone } })),
    onSuccess: useRefresh(study),
  });
}
