/** Asks the core for something to show, and asks again whenever anything changed. */
import { useQuery } from '@tanstack/react-query';
import type { ErrorsOf, InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import { useCore } from './CoreAccess.tsx';
import { OperationFailure } from './OperationFailure.ts';

export type Asked<N extends OperationName> = (
  | { readonly state: 'loading' }
  | { readonly state: 'failed'; readonly error: ErrorsOf<N> }
  | { readonly state: 'ready'; readonly value: OutputOf<N> }
) & { readonly askAgain: () => void };

/** `isWanted: false` keeps it from being asked: the answer stays `loading`. */
export function useOperation<N extends OperationName>(
  name: N,
  input: InputOf<N>,
  { isWanted = true }: { readonly isWanted?: boolean } = {},
): Asked<N> {
  const core = useCore();
  const query = useQuery<OutputOf<N>, Error>({
    queryKey: [name, input],
    enabled: isWanted,
    queryFn: async () => {
      const reply = await core.call(name, input);
      if (!reply.ok) throw new OperationFailure<N>(reply.error);
      return reply.value;
    },
  });
  const askAgain = () => void query.refetch();
  if (query.data !== undefined) return { state: 'ready', value: query.data, askAgain };
  if (query.error instanceof OperationFailure) return { state: 'failed', error: failureOf<N>(query.error), askAgain };
  if (query.error) throw query.error;
  return { state: 'loading', askAgain };
}

/** Only the query above throws these, and only with its own operation's failures. */
function failureOf<N extends OperationName>(error: OperationFailure): ErrorsOf<N> {
  return (error as OperationFailure<N>).failure;
}
