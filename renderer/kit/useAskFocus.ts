/** Where the keyboard goes when a button gives way to its question, and back again: what was pressed is gone from under it. */
import { type RefObject, useEffect, useRef } from 'react';

export function useAskFocus(isAsking: boolean): {
  /** Around the question: its first box, or the question itself, so that no second press of the same key answers it. */
  readonly question: RefObject<HTMLDivElement | null>;
  readonly opener: RefObject<HTMLButtonElement | null>;
} {
  const question = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const wasAsking = useRef(isAsking);
  useEffect(() => {
    if (isAsking !== wasAsking.current) {
      const place = isAsking ? (question.current?.querySelector('input') ?? question.current) : opener.current;
      place?.focus();
    }
    wasAsking.current = isAsking;
  }, [isAsking]);
  return { question, opener };
}
