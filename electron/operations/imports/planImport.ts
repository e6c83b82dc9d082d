/** From a table and what a person said about it to what would be written, with every fault by row and cell. Reads only. */
import { findCustomer } from '../../../db/customers.ts';
import { listKnownAppliances, listKnownParties } from '../../../db/imports.ts';
import type { ReadableDb } from '../../../db/openStore.ts';
import { groupRows, type ImportPlan } from '../../../domain/imports/groupRows.ts';
import type { ImportIssue, ImportReading } from '../../../domain/imports/importRow.ts';
import { partyBuckets } from '../../../domain/imports/partyBuckets.ts';
import { readImportRow } from '../../../domain/imports/readImportRow.ts';
import type { ImportMapping, ImportSuggestion } from '../../contract/imports.ts';
import { fail, notFound } from '../handler.ts';
import type { Table } from './readTable.ts';

export type PlannedImport = {
  readonly plan: ImportPlan;
  readonly issues: readonly ImportIssue[];
};

type Decision = {
  readonly row: number;
  readonly customerId: string | null;
  readonly sameAsRow: number | null;
  readonly applianceId: string | null;
};

export function planImport(
  db: ReadableDb,
  table: Table,
  mapping: ImportMapping,
  decisions: readonly Decision[],
  today: string,
): PlannedImport {
  requireEachOnce(mapping);
  requireKnown(db, table, decisions);
  const columns = table.headings.map((_, index) => mapping.columns[index] ?? null);
  const reading: ImportReading = { ...mapping, today };
  const read = table.rows.map(({ row, cells }) => readImportRow(row, cells, columns, reading));
  const byRow = new Map(decisions.map((one) => [one.row, one]));
  const known = listKnownAppliances(db);
  const grouped = groupRows({
    rows: read.map(({ row }) => row),
    decisions: byRow,
    onFile: (serialKey) => known.get(serialKey) ?? [],
  });
  const nothing = noSubject(columns);
  const issues = nothing.length > 0 ? nothing : [...read.flatMap((one) => one.issues), ...grouped.issues];
  return {
    plan: grouped.plan,
    issues: issues.toSorted((a, b) => a.row - b.row),
  };
}

/** Without a name or a serial with a service there is nothing to file a row under. */
function noSubject(columns: readonly (string | null)[]): readonly ImportIssue[] {
  const isCustomers = columns.includes('customerName');
  const isServices = columns.includes('serial') && columns.includes('servicedOn');
  return isCustomers || isServices ? [] : [{ row: 1, column: null, code: 'needed', detail: 'customerName' }];
}

function requireEachOnce({ columns }: ImportMapping): void {
  const given = columns.filter((key) => key !== null);
  const twice = given.find((key, index) => given.indexOf(key) !== index);
  if (twice !== undefined) fail('field-twice', { field: twice });
}

/** What a person decided on must still be there: a customer on file, an earlier row. */
function requireKnown(db: ReadableDb, table: Table, decisions: readonly Decision[]): void {
  const rows = new Set(table.rows.map(({ row }) => row));
  for (const { row, customerId, sameAsRow } of decisions) {
    if (customerId !== null && findCustomer(db, customerId) === undefined) notFound('customers', customerId);
    if (sameAsRow !== null && (sameAsRow >= row || !rows.has(sameAsRow))) notFound('rows', String(sameAsRow));
  }
}

/** Whom of the list somebody on file, or an earlier row, may be; those already decided on are left out. */
export function suggestSame(
  db: ReadableDb,
  plan: ImportPlan,
  decisions: readonly Decision[],
): readonly ImportSuggestion[] {
  const decided = new Set(decisions.map(({ row }) => row));
  const buckets = partyBuckets<{
    readonly customerId: string | null;
    readonly row: number | null;
    readonly where: string | null;
  }>();
  for (const party of listKnownParties(db)) {
    const { customerId, city, ...fields } = party;
    buckets.add({
      ...fields,
      key: { customerId, row: null, where: [party.street, city].filter(Boolean).join(', ') || null },
    });
  }
  return plan.customers.flatMap(({ row, customer }) => {
    const entry = {
      name: customer.name,
      phone: customer.phone,
      email: customer.email,
      street: customer.street,
      postcode: customer.postcode,
    };
    const others = decided.has(row) ? [] : buckets.alike(entry);
    buckets.add({
      ...entry,
      key: { customerId: null, row, where: [customer.street, customer.city].filter(Boolean).join(', ') || null },
    });
    if (others.length === 0) return [];
    return [
      {
        row,
        name: customer.name,
        others: others
          .slice(0, 5)
          .map(({ party, because }) => ({ ...party.key, name: party.name, because: [...because] })),
      },
    ];
  });
}
