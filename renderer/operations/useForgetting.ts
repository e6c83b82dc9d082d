/** Once nobody is signed in, nothing that was shown is kept: the next person may see less, or another store. */
import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { forgetWorksheets } from '../worksheets/core/keptInputs.ts';

export function useForgetting(isNobodySignedIn: boolean): void {
  const queries = useQueryClient();
  useEffect(() => {
    if (!isNobodySignedIn) return;
    queries.removeQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'app.status' });
    forgetWorksheets(sessionStorage);
  }, [isNobodySignedIn, queries]);
}
