/** Writes the published JSON Schema of a sealed record. Run it whenever electron/sealing/sealedRecord.ts changes. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { RECORD_SCHEMA_FILE, recordJsonSchemaText } from '../electron/sealing/recordJsonSchema.ts';

const file = new URL(`../${RECORD_SCHEMA_FILE}`, import.meta.url);
mkdirSync(new URL('.', file), { recursive: true });
writeFileSync(file, recordJsonSchemaText());
console.log(`${RECORD_SCHEMA_FILE} written`);
