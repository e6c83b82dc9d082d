/** Asks the core to do something. The answer is a value: the caller looks at `ok`, and what failed stays in `error` for the screen. */
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import type { ErrorsOf, InputOf, OperationName, ReplyOf } from '../../electron/contract/index.ts';
import { useCore } from './CoreAccess.tsx';
import { askWhoIsSignedIn } from './createQueries.ts';

export type Act<N extends OperationName> = {
  readonly act: (input: InputOf<N>) => Promise<ReplyOf<N>>;
  readonly isBusy: boolean;
  /** Of the last try; null when it went well or nothing was tried. */
  readonly error: ErrorsOf<N> | null;
  readonly clearError: () => void;
};

export function useAct<N extends OperationName>(name: N): Act<N> {
  const core = useCore();
  const queries = useQueryClient();
  const [running, setRunning] = useState(0);
  const [error, setError] = useState<ErrorsOf<N> | null>(null);
  const act = useCallback(
    async (input: InputOf<N>) => {
      setRunning((count) => count + 1);
      try {
        const reply = await core.call(name, input);
        setError(reply.ok ? null : reply.error);
        // Not awaited: the screen may go on while lists catch up.
        if (reply.ok) void queries.invalidateQueries();
        else if (reply.error.code === 'not-signed-in') askWhoIsSignedIn(queries);
        return reply;
      } finally {
        setRunning((count) => count - 1);
      }
    },
    [core, name, queries],
  );
  const clearError = useCallback(() => setError(null), []);
  return { act, isBusy: running > 0, error, clearError };
}
