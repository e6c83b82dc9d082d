/** Nothing can be written just now: a long write has the store. Whoever wanted to waits for it and tries again. */
export class StoreTaken extends Error {
  readonly freed: Promise<void>;
  constructor(freed: Promise<void>) {
    super('a long write has the store');
    this.name = 'StoreTaken';
    this.freed = freed;
  }
}

/** Does it once the store is free; what it throws for another reason leaves. It has written nothing when it meets one. */
export async function onceFree<T>(work: () => T | Promise<T>): Promise<T> {
  for (;;) {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof StoreTaken)) throw error;
      await error.freed;
    }
  }
}
