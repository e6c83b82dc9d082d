/** The JSON Schema of a sealed record, for whoever reads one without this program. */
import { z } from 'zod';
import { sealedRecord } from './sealedRecord.ts';

export const RECORD_SCHEMA_FILE = 'assets/schemas/record-1.schema.json';

export function recordJsonSchemaText(): string {
  const schema = z.toJSONSchema(sealedRecord, { target: 'draft-2020-12', io: 'output', reused: 'ref' });
  const described = {
    ...schema,
    $id: 'urn:lightoff:schema:record:1',
    title: 'Sealed record of one run of a visit',
    description: [
      'The bytes that are hashed are the RFC 8785 canonical form of the record; the fingerprint is their SHA-256.',
      'Numbers are plain decimals in text. A quantity is named after its unit: supplyC is in degrees Celsius.',
      'An object {"commitment": h} stands for a personal value: h is the SHA-256 of salt, line feed, path, line feed and',
      'value in UTF-8, the path being the JSON pointer of that object. Salts and values are handed out apart from the',
      'record; once a person has been erased they are gone, and the fingerprint still fits.',
    ].join(' '),
  };
  return `${JSON.stringify(described, null, 2)}\n`;
}
