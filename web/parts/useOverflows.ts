import { useEffect, useRef, useState } from 'react';

/** Whether a box holds more than it shows, so that it must be reachable by keyboard to scroll. */
export function useOverflows<Box extends HTMLElement>() {
  const ref = useRef<Box>(null);
  const [overflows, setOverflows] = useState(false);
  useEffect(() => {
    const box = ref.current;
    if (!box) return;
    const look = () =>
      setOverflows(box.scrollWidth > box.clientWidth + 1 || box.scrollHeight > box.clientHeight + 1);
    const watch = new ResizeObserver(look);
    watch.observe(box);
    if (box.firstElementChild) watch.observe(box.firstElementChild);
    return () => watch.disconnect();
  }, []);
  return { ref, overflows };
}
