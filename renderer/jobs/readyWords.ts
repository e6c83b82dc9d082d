/** How far a job that waits is from a firm booking, in a few words. */
import type { AgedAnswer } from '../../domain/procedure/agedReadiness.ts';

export function readyWords(job: {
  readonly openReadiness: readonly string[];
  readonly agedReadiness: readonly AgedAnswer[];
}): string {
  const [open, aged] = [job.openReadiness.length, job.agedReadiness.length];
  const again = aged === 0 ? '' : `, ${aged} to ask again`;
  if (open === 0) return `ready to book${again}`;
  return `${open === 1 ? '1 readiness item' : `${open} readiness items`} open${again}`;
}
