/** What the place of a field says about it. */
import type { SheetPath } from '../../../domain/procedure/sheetEdit.ts';

/** The nearest named field around: `limits` for `limits.3.edge`; steps are the same in both lists. */
export function parentOf(path: SheetPath): string {
  const name = path.slice(0, -1).findLast((part) => typeof part === 'string');
  return name === 'service' || name === 'repair' ? 'startup' : String(name ?? '');
}
