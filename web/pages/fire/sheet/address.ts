/** Which sheet: a firing of a study, or whatever firing a link opens. */
export type SheetAddress =
  | { readonly kind: 'study'; readonly study: string; readonly firing: string }
  | { readonly kind: 'link'; readonly token: string };

/** Where the service answers for it; also the name under which this phone keeps it. */
export function apiPath(address: SheetAddress): string {
  return address.kind === 'link'
    ? `/api/shared/${encodeURIComponent(address.token)}/sheet`
    : `/api/studies/${address.study}/firings/${address.firing}/sheet`;
}
