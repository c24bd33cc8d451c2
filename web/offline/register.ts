/** Whether the sheet will open without a network from now on. */
export type Readiness = 'ready' | 'not here' | 'failed';

/**
 * Keeps the sheet's files on this device. Browsers allow that at https addresses and on the machine itself only;
 * elsewhere the page works while it stays open.
 */
export async function keepSheetFiles(): Promise<Readiness> {
  if (!('serviceWorker' in navigator)) return 'not here';
  try {
    await navigator.serviceWorker.register('/sheet-worker.js', { updateViaCache: 'none' });
    await navigator.serviceWorker.ready;
    return 'ready';
  } catch {
    return 'failed';
  }
}
