/** What the list of deadlines is narrowed to. */
import type { DEADLINE_FILTERS } from '../../electron/contract/dues.ts';

export type DeadlineFilter = {
  readonly show: (typeof DEADLINE_FILTERS)[number];
  readonly staffId: string | null;
  readonly maker: string | null;
  readonly week: string | null;
};
