/** Every appliance with an open make-safe, gathered page by page: one that is left out of a list is one that is lit. */
import { useQuery } from '@tanstack/react-query';
import type { ErrorsOf, OutputOf } from '../../electron/contract/index.ts';
import { useCore } from '../operations/CoreAccess.tsx';
import { OperationFailure } from '../operations/OperationFailure.ts';

type Row = OutputOf<'appliances.list'>['rows'][number];
type Open = { readonly rows: readonly Row[]; readonly error: ErrorsOf<'appliances.list'> | null };

const PAGE = 200;

export function useOpenMakeSafes(): Open {
  const core = useCore();
  const query = useQuery<readonly Row[], OperationFailure<'appliances.list'>>({
    queryKey: ['appliances.list', 'open-make-safes'],
    queryFn: async () => {
      const open: Row[] = [];
      let after: string | null = null;
      do {
        const reply: Awaited<ReturnType<typeof core.call<'appliances.list'>>> = await core.call('appliances.list', {
          limit: PAGE,
          after,
        });
        if (!reply.ok) throw new OperationFailure<'appliances.list'>(reply.error);
        open.push(...reply.value.rows.filter(({ openMakeSafes }) => openMakeSafes > 0));
        after = reply.value.next;
      } while (after !== null);
      return open;
    },
  });
  return { rows: query.data ?? [], error: query.error?.failure ?? null };
}
