/** What is behind a record's commitments, as the file that goes beside it. */
import { z } from 'zod';
import { canonicalJson } from '../../sealing/canonicalJson.ts';
import { type Disclosure, disclosure } from '../../sealing/commitment.ts';

export const disclosuresFile = z.strictObject({
  schema: z.literal('lightoff.disclosures/1'),
  /** Fingerprint of the record they belong to. */
  recordSha256: z.string().regex(/^[0-9a-f]{64}$/),
  disclosures: z.array(disclosure),
});

export function disclosuresJson(recordSha256: string, disclosures: readonly Disclosure[]): string {
  return canonicalJson({ schema: 'lightoff.disclosures/1', recordSha256, disclosures });
}
