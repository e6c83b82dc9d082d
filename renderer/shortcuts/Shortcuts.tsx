/**
 * Keys that work anywhere on a screen. A screen names its own with `useShortcut`; `?` lists whatever works at that moment.
 * They rest while somebody types in a field, and can be switched off altogether (WCAG 2.2, 2.1.4).
 */
import { Modal, Table } from '@mantine/core';
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react';
import { KeyHint } from '../kit/KeyHint.tsx';

type Shortcut = { readonly keys: string; readonly label: string; readonly act: () => void };
type Registry = {
  readonly add: (shortcut: Shortcut) => () => void;
  readonly showList: () => void;
  readonly isOn: boolean;
  readonly setOn: (isOn: boolean) => void;
};

const STORAGE_KEY = 'lightoff.shortcuts';
/** How long the second key of a pair may take. */
const PAIR_WAIT_MS = 1200;
const ShortcutContext = createContext<Registry | null>(null);

/** They work while somebody types: the fields and forms listen for them themselves. */
const IN_FORMS = [
  { keys: 'Ctrl+Enter', label: 'In a form: save it, from any of its fields' },
  { keys: 'Alt+↓', label: 'In a number: its next unit. In a day: the calendar' },
];

export function Shortcuts({ children }: { readonly children: ReactNode }) {
  const shortcuts = useRef(new Set<Shortcut>());
  const [listed, setListed] = useState<readonly Shortcut[] | null>(null);
  const [isOn, setIsOn] = useState(() => window.localStorage.getItem(STORAGE_KEY) !== 'off');

  const add = useCallback((shortcut: Shortcut) => {
    shortcuts.current.add(shortcut);
    return () => {
      shortcuts.current.delete(shortcut);
    };
  }, []);
  // The frame's `g` pairs are the same everywhere: what this screen alone can do stands above them.
  const showList = useCallback(
    () =>
      setListed(
        [...shortcuts.current].toSorted((a, b) => Number(a.keys.startsWith('g ')) - Number(b.keys.startsWith('g '))),
      ),
    [],
  );
  const setOn = useCallback((wanted: boolean) => {
    window.localStorage.setItem(STORAGE_KEY, wanted ? 'on' : 'off');
    setIsOn(wanted);
  }, []);

  useEffect(() => {
    let first = '';
    let firstAt = 0;
    const onKey = (event: KeyboardEvent) => {
      if (!isOn || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTyping(event)) return;
      // A dialog has the keyboard to itself.
      if (document.querySelector('[role="dialog"]') !== null) return;
      const pair = event.timeStamp - firstAt < PAIR_WAIT_MS ? `${first} ${event.key}` : null;
      const found = findShortcut(shortcuts.current, pair) ?? findShortcut(shortcuts.current, event.key);
      first = event.key;
      firstAt = event.timeStamp;
      if (event.key === '?') showList();
      else if (found) found.act();
      else return;
      event.preventDefault();
      first = '';
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [isOn, showList]);

  const registry = useMemo(() => ({ add, showList, isOn, setOn }), [add, showList, isOn, setOn]);
  return (
    <ShortcutContext value={registry}>
      {children}
      <Modal
        opened={listed !== null}
        onClose={() => setListed(null)}
        title="Keys on this screen"
        // While it fades it would still hold the keyboard.
        transitionProps={{ duration: 0 }}
      >
        <Table className="lo-table">
          <Table.Tbody>
            {[...(listed ?? []), ...IN_FORMS, { keys: '?', label: 'This list' }].map(({ keys, label }) => (
              <Table.Tr key={keys}>
                <Table.Td>
                  <KeyHint keys={keys} />
                </Table.Td>
                <Table.Td>{label}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Modal>
    </ShortcutContext>
  );
}

/** `keys`: one key (`n`, `/`), or two pressed one after the other (`g c`). */
export function useShortcut(keys: string, label: string, act: () => void): void {
  const { add } = useShortcuts();
  const latest = useRef(act);
  useEffect(() => {
    latest.current = act;
  });
  useEffect(() => add({ keys, label, act: () => latest.current() }), [add, keys, label]);
}

export function useShortcuts(): Registry {
  const registry = useContext(ShortcutContext);
  if (registry === null) throw new Error('shortcuts are used outside <Shortcuts>');
  return registry;
}

/** Of two for the same keys the later one wins: the screen's over the frame's. */
function findShortcut(shortcuts: ReadonlySet<Shortcut>, keys: string | null): Shortcut | undefined {
  return [...shortcuts].reverse().find((shortcut) => shortcut.keys === keys);
}

/** Nothing is typed into a tick or a choice: the keys go on working there. */
const NOT_TYPED_INTO = ['radio', 'checkbox', 'button', 'submit'];

function isTyping(event: KeyboardEvent): boolean {
  const target = event.target;
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement && NOT_TYPED_INTO.includes(target.type)) return false;
  return target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName);
}
