import { useSyncExternalStore } from 'react';

export const APPEARANCES = ['system', 'light', 'dark'] as const;
export type Appearance = (typeof APPEARANCES)[number];

const KEY = 'nearsherd.appearance';
const systemDark = matchMedia('(prefers-color-scheme: dark)');
const listeners = new Set<() => void>();

function subscribe(listener: () => void) {
  listeners.add(listener);
  systemDark.addEventListener('change', listener);
  return () => {
    listeners.delete(listener);
    systemDark.removeEventListener('change', listener);
  };
}

function chosen(): Appearance {
  const kept = document.documentElement.dataset.appearance;
  return kept === 'light' || kept === 'dark' ? kept : 'system';
}
function shown(): 'light' | 'dark' {
  const choice = chosen();
  return choice === 'system' ? (systemDark.matches ? 'dark' : 'light') : choice;
}

/** Sets light, dark or the system's own, and remembers it in this browser. */
export function setAppearance(appearance: Appearance) {
  const root = document.documentElement;
  if (appearance === 'system') delete root.dataset.appearance;
  else root.dataset.appearance = appearance;
  try {
    localStorage.setItem(KEY, appearance);
  } catch {
    // Storage refused: the choice holds until the page is left.
  }
  for (const listener of listeners) listener();
}

/** What the reader chose. */
export const useAppearanceChoice = () => useSyncExternalStore(subscribe, chosen);
/** What is on the screen now; figures take their theme from it. */
export const useAppearance = () => useSyncExternalStore(subscribe, shown);
