/**
 * Lets every shown answer be asked again when the core says that something changed. All of them rather than those of the
 * changed subject: one write shows in many places (a make-safe in five lists), and a repeated question costs under a millisecond.
 */
import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { useCore } from './CoreAccess.tsx';

export function useChangeFollowing(): void {
  const core = useCore();
  const queries = useQueryClient();
  useEffect(() => core.onChanged(() => void queries.invalidateQueries()), [core, queries]);
}
