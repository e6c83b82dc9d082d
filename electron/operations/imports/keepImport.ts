/** An import without a fault, written a piece at a time with the row that says what it was and which span of the change log is its own. */
import { findCompany } from '../../../db/people.ts';
import { device, imports } from '../../../db/schema/index.ts';
import type { StoreWriter } from '../../../db/storeWriter.ts';
import type { ImportPlan } from '../../../domain/imports/groupRows.ts';
import type { ImportMapping } from '../../contract/imports.ts';
import { writeImport } from './writeImport.ts';

export type ImportToKeep = {
  readonly fileName: string;
  readonly attachmentId: string;
  readonly sheetName: string | null;
  readonly mapping: ImportMapping;
  readonly plan: ImportPlan;
  readonly today: string;
  readonly importedById: string;
};

export type ImportCounts = {
  readonly customers: number;
  readonly sites: number;
  readonly appliances: number;
  readonly services: number;
};

/** Stops after each entry of the plan; answers the id of the import. */
export function* keepImport(writer: StoreWriter, given: ImportToKeep): Generator<void, string> {
  const company = findCompany(writer.db);
  const here = writer.db.select().from(device).get();
  if (company === undefined || here === undefined) throw new Error('a store without a company or a device');
  const { fileName, attachmentId, plan, today, importedById } = given;
  const firstSeq = writer.nextSequence;
  yield* writeImport(writer, plan, { ...company, today, fileName });
  return writer.insert(imports, {
    fileName,
    attachmentId,
    mapping: { ...given.mapping, sheetName: given.sheetName },
    counts: countsOf(plan),
    deviceId: here.deviceId,
    incarnation: here.incarnation,
    firstSeq,
    lastSeq: writer.nextSequence,
    importedById,
    importedAt: writer.now,
  });
}

/** What would be new. */
export function countsOf(plan: ImportPlan): ImportCounts {
  return {
    customers: plan.customers.filter(({ customerId }) => customerId === null).length,
    sites: plan.sites.length,
    appliances: plan.appliances.filter(({ applianceId }) => applianceId === null).length,
    services: plan.services.length,
  };
}
