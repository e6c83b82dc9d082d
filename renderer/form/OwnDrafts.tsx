/** Shows what is in it once the drafts of the person who is signed in are in place: a form reads them when it appears. */
import { type ReactNode, useLayoutEffect, useState } from 'react';
import { bringDraftsOf } from './draftsByPerson.ts';

export function OwnDrafts({ staffId, children }: { readonly staffId: string; readonly children: ReactNode }) {
  const [broughtFor, setBroughtFor] = useState<string | null>(null);
  useLayoutEffect(() => {
    bringDraftsOf(sessionStorage, staffId);
    setBroughtFor(staffId);
  }, [staffId]);
  return broughtFor === staffId ? children : null;
}
