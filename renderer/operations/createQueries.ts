/** The cache of answers. The core is on this computer: nothing is retried blindly, and the browser's idea of being online does not matter. */
import { QueryCache, QueryClient } from '@tanstack/react-query';
import { OperationFailure } from './OperationFailure.ts';

export function createQueries(): QueryClient {
  const queries = new QueryClient({
    queryCache: new QueryCache({
      // The core was restarted, or somebody signed out in this tab: show the sign-in instead of the failure.
      onError: (error) => {
        if (error instanceof OperationFailure && error.failure.code === 'not-signed-in') askWhoIsSignedIn(queries);
      },
    }),
    defaultOptions: {
      queries: { retry: false, networkMode: 'always', staleTime: 5_000, refetchOnWindowFocus: true },
    },
  });
  return queries;
}

export function askWhoIsSignedIn(queries: QueryClient): void {
  void queries.invalidateQueries({ queryKey: ['app.status'] });
}
