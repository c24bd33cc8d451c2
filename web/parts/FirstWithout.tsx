import { type ReactNode, useDeferredValue } from 'react';

/** What may come a moment after the page: first it is shown without, so that what stands above is seen sooner. */
export const FirstWithout = ({ children }: { readonly children: ReactNode }) =>
  useDeferredValue(true, false) && children;
