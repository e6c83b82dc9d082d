/** The search of a list: `/` leads to it, every pause in typing searches. */
import { TextInput } from '@mantine/core';
import { useDebouncedCallback } from '@mantine/hooks';
import { useLayoutEffect, useRef, useState } from 'react';
import { useShortcut } from '../shortcuts/Shortcuts.tsx';

export function SearchBox({
  label,
  query,
  onQuery,
  isFocused = false,
  onEnter,
}: {
  /** `Search customers by name, phone, street or city` */
  readonly label: string;
  readonly query: string;
  readonly onQuery: (query: string) => void;
  /** The screen is for searching: the keyboard begins here. */
  readonly isFocused?: boolean;
  /** Enter or the down arrow: on to what is found. */
  readonly onEnter?: (text: string) => void;
}) {
  const [text, setText] = useState(query);
  const search = useDebouncedCallback(onQuery, 200);
  const input = useRef<HTMLInputElement>(null);
  useShortcut('/', 'Search', () => input.current?.focus());
  // With the first paint: whoever sees the box may type at once.
  useLayoutEffect(() => {
    if (isFocused) input.current?.focus();
  }, [isFocused]);
  return (
    <TextInput
      ref={input}
      type="search"
      label={label}
      value={text}
      maw="32rem"
      autoComplete="off"
      onChange={(event) => {
        setText(event.currentTarget.value);
        search(event.currentTarget.value);
      }}
      onKeyDown={(event) => {
        if (onEnter === undefined || (event.key !== 'Enter' && event.key !== 'ArrowDown')) return;
        event.preventDefault();
        // Not waited for: whoever presses Enter has typed what they wanted to.
        search.cancel();
        onQuery(text);
        onEnter(text);
      }}
    />
  );
}
