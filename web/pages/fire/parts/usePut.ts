import { useRef } from 'react';
import type { Draft } from '../../../parts/useDraft.ts';

/**
 * Puts parts of a form together. A number is told when its field is left, which is the very press that changes
 * another field: each must see what the other has just put, so the newest form is kept beside React's.
 */
export function usePut<Form extends object>({ value, set }: Draft<Form>): (part: Partial<Form>) => void {
  const newest = useRef(value);
  const rendered = useRef(value);
  if (rendered.current !== value) {
    rendered.current = value;
    newest.current = value;
  }
  return (part) => {
    newest.current = { ...newest.current, ...part };
    set(newest.current);
  };
}
