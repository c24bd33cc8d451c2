/** Whether the sheet will open without a network from now on. */
export type Readiness = 'ready' | 'not here' | 'failed';

/**
 * Keeps the sheet's files on this device. Browsers allow that at https addresses and on the machine itself only;
 * elsewhere the page works while it stays open.
 */
export async function keepSheetFiles(): Promise<Readiness> {
  if (!('serviceWorker' in navigator)) return 'not here';
  try {
    const made = await navigator.serviceWorker.register('/sheet-worker.js', { updateViaCache: 'none' });
    return await Promise.race([navigator.serviceWorker.ready.then(() => 'ready' as const), given(made)]);
  } catch {
    return 'failed';
  }
}

/** Tells when the first worker gives up: a file of the sheet could not be had. */
function given({ installing, active }: ServiceWorkerRegistration): Promise<'failed'> {
  return new Promise((failed) => {
    if (active === null)
      installing?.addEventListener('statechange', () => {
        if (installing.state === 'redundant') failed('failed');
      });
  });
}
