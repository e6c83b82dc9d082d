/** Stops a person from walking away from something that has not reached the store, and says why it has not. */
import { Button, Group, Modal, Stack } from '@mantine/core';
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useId,
  useMemo,
  useRef,
  useState,
} from 'react';

type Guard = { readonly set: (id: string, why: string | null) => void };
const GuardContext = createContext<Guard | null>(null);

export function LeaveGuard({ children }: { readonly children: ReactNode }) {
  const reasons = useRef(new Map<string, string>());
  const lastHash = useRef(window.location.hash);
  const [held, setHeld] = useState<{ readonly hash: string; readonly why: string } | null>(null);

  const set = useCallback((id: string, why: string | null) => {
    if (why === null) reasons.current.delete(id);
    else reasons.current.set(id, why);
  }, []);

  useEffect(() => {
    const onHash = (event: HashChangeEvent) => {
      const [why] = reasons.current.values();
      if (why === undefined || window.location.hash === lastHash.current) {
        lastHash.current = window.location.hash;
        return;
      }
      // Before the screens hear of it.
      event.stopImmediatePropagation();
      const wanted = window.location.hash;
      window.history.replaceState(null, '', lastHash.current);
      setHeld({ hash: wanted, why });
    };
    const onUnload = (event: BeforeUnloadEvent) => {
      if (reasons.current.size > 0) event.preventDefault();
    };
    window.addEventListener('hashchange', onHash, { capture: true });
    window.addEventListener('beforeunload', onUnload);
    return () => {
      window.removeEventListener('hashchange', onHash, { capture: true });
      window.removeEventListener('beforeunload', onUnload);
    };
  }, []);

  const guard = useMemo(() => ({ set }), [set]);
  return (
    <GuardContext value={guard}>
      {children}
      <Modal opened={held !== null} onClose={() => setHeld(null)} title="Not saved yet">
        <Stack>
          <p style={{ margin: 0 }}>{held?.why}</p>
          <Group>
            <Button onClick={() => setHeld(null)}>Stay here</Button>
            <Button
              variant="default"
              onClick={() => {
                reasons.current.clear();
                if (held) window.location.hash = held.hash;
                setHeld(null);
              }}
            >
              Leave anyway
            </Button>
          </Group>
        </Stack>
      </Modal>
    </GuardContext>
  );
}

/** While `why` is given, leaving the screen or closing the window is questioned. */
export function useUnsaved(why: string | null): void {
  const guard = useContext(GuardContext);
  const id = useId();
  useEffect(() => {
    guard?.set(id, why);
    return () => guard?.set(id, null);
  }, [guard, id, why]);
}
