/**
 * The service worker of the sheet at the fire, built by scripts/build/sheet-worker.ts. It keeps the built files that the
 * sheet needs and opens the sheet without a network. It answers nothing else: every other page and the whole API go to
 * the service as if it were not there. What the sheet last showed, and what waits, the page keeps itself.
 */
import { clientsClaim } from 'workbox-core';
import { cleanupOutdatedCaches, matchPrecache, precache } from 'workbox-precaching';
import { registerRoute } from 'workbox-routing';
import { isSheetPage } from './sheet-pages.ts';

declare const SHEET_FILES: { url: string; revision: string | null }[];
declare const self: Window & { skipWaiting(): Promise<void> };

// A phone at the fire has one page open, and that page has loaded all it needs: a new build takes over at once.
self.skipWaiting();
clientsClaim();
cleanupOutdatedCaches();
const files = SHEET_FILES;
precache(files);

/** How long a weak network may keep the sheet waiting, ms. */
const PATIENCE = 4_000;

registerRoute(
  ({ request, url, sameOrigin }) => sameOrigin && request.mode === 'navigate' && isSheetPage(url.pathname),
  async ({ request }) => {
    try {
      const answer = await fetch(request, { signal: AbortSignal.timeout(PATIENCE) });
      if (answer.status < 500) return answer;
    } catch {
      // No network, or next to none: the kept page is as good.
    }
    return (await matchPrecache('/index.html')) ?? Response.error();
  },
);

registerRoute(
  ({ url, sameOrigin }) =>
    sameOrigin && files.some((file) => file.url === url.pathname && file.url !== '/index.html'),
  async ({ request }) => (await matchPrecache(request)) ?? fetch(request),
);
