import { useLayoutEffect, useState, useSyncExternalStore } from 'react';
import { createSource, type Source } from './source.ts';

/** A source that follows what the page computes; between two renders anyone may set it to something else. */
export function useSourceOf<Data>(data: Data): Source<Data> {
  const [source] = useState(() => createSource(data));
  useLayoutEffect(() => source.set(data), [source, data]);
  return source;
}

/** For small parts of a page that must follow a source, such as a line of text beneath a plot. */
export const useSourceValue = <Data>(source: Source<Data>): Data =>
  useSyncExternalStore(source.subscribe, source.get);

/** A source made of two others, kept up with both. */
export function useCombined<One, Other, Both>(
  one: Source<One>,
  other: Source<Other>,
  combine: (one: One, other: Other) => Both,
): Source<Both> {
  const [both] = useState(() => createSource(combine(one.get(), other.get())));
  useLayoutEffect(() => {
    const again = () => both.set(combine(one.get(), other.get()));
    again();
    const stops = [one.subscribe(again), other.subscribe(again)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [one, other, combine, both]);
  return both;
}
