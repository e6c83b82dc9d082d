import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RECORD_SCHEMA_FILE, recordJsonSchemaText } from '../../../electron/sealing/recordJsonSchema.ts';

describe('the published schema of a record', () => {
  it('is up to date: else run scripts/writeRecordSchema.ts', () => {
    const published = readFileSync(new URL(`../../../${RECORD_SCHEMA_FILE}`, import.meta.url), 'utf8');
    expect(JSON.parse(published)).toEqual(JSON.parse(recordJsonSchemaText()));
  });
});
