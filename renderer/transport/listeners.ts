/** A set of listeners that all hear, even when one of them throws. */

export type Listeners<T> = {
  readonly add: (listener: (value: T) => void) => () => void;
  readonly tell: (value: T) => void;
};

export function createListeners<T>(): Listeners<T> {
  const listeners = new Set<(value: T) => void>();
  return {
    add: (listener) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    tell: (value) => {
      for (const listener of [...listeners]) {
        try {
          listener(value);
        } catch (error) {
          // Report it as a bug of its own instead of keeping the others from hearing.
          queueMicrotask(() => {
            throw error;
          });
        }
      }
    },
  };
}
