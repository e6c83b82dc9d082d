/** A value kept outside React, for what goes on while screens come and go: who shows it is drawn again when it changes. */
import { useSyncExternalStore } from 'react';

export type SharedValue<T> = {
  readonly get: () => T;
  readonly set: (value: T) => void;
  readonly subscribe: (listener: () => void) => () => void;
};

/** `isSame`: nobody is told of a value that is the same as the one before. */
export function createSharedValue<T>(first: T, isSame: (a: T, b: T) => boolean = Object.is): SharedValue<T> {
  let current = first;
  const listeners = new Set<() => void>();
  return {
    get: () => current,
    set: (value) => {
      if (isSame(current, value)) return;
      current = value;
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

export function useSharedValue<T>({ subscribe, get }: SharedValue<T>): T {
  return useSyncExternalStore(subscribe, get);
}
