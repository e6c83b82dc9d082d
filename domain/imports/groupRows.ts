/**
 * Which rows of a list speak of the same customer, site and appliance. Rows are one only where they say the same, or
 * carry the same customer number without contradiction, or where a person said so; likeness alone never joins them.
 */
import { foldForSearch } from '../text/foldForSearch.ts';
import { serialKeyOf } from '../text/serialKey.ts';
import type {
  ImportAppliance,
  ImportCustomer,
  ImportIssue,
  ImportRow,
  ImportService,
  ImportSite,
} from './importRow.ts';

export type PlannedCustomer = {
  readonly row: number;
  readonly customer: ImportCustomer;
  /** On file already, as a person said. */
  readonly customerId: string | null;
};
export type PlannedSite = { readonly row: number; readonly ofCustomer: number; readonly site: ImportSite };
export type PlannedAppliance = {
  readonly row: number;
  /** null: on file already. */
  readonly ofSite: number | null;
  readonly applianceId: string | null;
  readonly appliance: ImportAppliance;
};
export type PlannedService = { readonly row: number; readonly ofAppliance: number; readonly service: ImportService };

/** `of…` counts into the list before it. */
export type ImportPlan = {
  readonly customers: readonly PlannedCustomer[];
  readonly sites: readonly PlannedSite[];
  readonly appliances: readonly PlannedAppliance[];
  readonly services: readonly PlannedService[];
};

export type KnownAppliance = { readonly applianceId: string; readonly maker: string; readonly where: string | null };

export type GroupingInput = {
  readonly rows: readonly ImportRow[];
  readonly decisions: ReadonlyMap<
    number,
    { readonly customerId: string | null; readonly sameAsRow: number | null; readonly applianceId: string | null }
  >;
  /** By folded serial. */
  readonly onFile: (serialKey: string) => readonly KnownAppliance[];
};

export function groupRows(input: GroupingInput): {
  readonly plan: ImportPlan;
  readonly issues: readonly ImportIssue[];
} {
  const issues: ImportIssue[] = [];
  const customers: PlannedCustomer[] = [];
  const sites: PlannedSite[] = [];
  const appliances: PlannedAppliance[] = [];
  const services: PlannedService[] = [];
  const customerOf = new Map<string, number>();
  const customerOfRow = new Map<number, number>();
  const siteOf = new Map<string, number>();
  const applianceOf = new Map<string, number>();

  for (const one of input.rows) {
    const decision = input.decisions.get(one.row);
    const customer = one.customer === null ? null : customerIndex(one.row, one.customer, decision);
    const site = customer === null || one.site === null ? null : siteIndex(one.row, customer, one.site);
    const appliance = one.appliance === null ? null : applianceIndex(one, one.appliance, site, decision?.applianceId);
    if (appliance !== null && one.service !== null) {
      services.push({ row: one.row, ofAppliance: appliance, service: one.service });
    }
  }
  return { plan: { customers, sites, appliances, services }, issues };

  function customerIndex(
    row: number,
    customer: ImportCustomer,
    decision: { readonly customerId: string | null; readonly sameAsRow: number | null } | undefined,
  ): number {
    const said = decision?.sameAsRow === null ? undefined : customerOfRow.get(decision?.sameAsRow ?? -1);
    const key = customer.number === null ? JSON.stringify(customer) : `number ${customer.number}`;
    const known = said ?? customerOf.get(key);
    if (known === undefined) {
      customers.push({ row, customer, customerId: decision?.customerId ?? null });
      const added = customers.length - 1;
      customerOf.set(key, added);
      customerOfRow.set(row, added);
      return added;
    }
    const first = customers[known];
    if (said === undefined && first !== undefined && contradicts(first.customer, customer)) {
      issues.push({
        row,
        column: null,
        code: 'number-of-two-customers',
        detail: `${customer.number ?? ''}, row ${first.row}`,
      });
    }
    customerOfRow.set(row, known);
    return known;
  }

  function siteIndex(row: number, ofCustomer: number, site: ImportSite): number {
    const key = `${ofCustomer} ${JSON.stringify(site)}`;
    const known = siteOf.get(key);
    if (known !== undefined) return known;
    sites.push({ row, ofCustomer, site });
    siteOf.set(key, sites.length - 1);
    return sites.length - 1;
  }

  function applianceIndex(
    { row, customer }: ImportRow,
    appliance: ImportAppliance,
    ofSite: number | null,
    decided: string | null | undefined,
  ): number | null {
    const serialKey = serialKeyOf(appliance.serial);
    if (serialKey === '') return null;
    const key = `${foldForSearch(appliance.maker ?? '')} ${serialKey}`;
    const known = applianceOf.get(key);
    if (known !== undefined) {
      const first = appliances[known];
      const isSame =
        first !== undefined && first.ofSite === ofSite && JSON.stringify(first.appliance) === JSON.stringify(appliance);
      if (!isSame)
        issues.push({
          row,
          column: null,
          code: 'serial-twice',
          detail: `${appliance.serial}, row ${first?.row ?? ''}`,
        });
      return known;
    }
    const found = input
      .onFile(serialKey)
      .filter((one) => appliance.maker === null || foldForSearch(one.maker) === foldForSearch(appliance.maker));
    const applianceId = customer === null || decided != null ? whichOnFile(row, appliance, found, decided) : null;
    if (customer !== null && decided == null && found.length > 0) {
      issues.push({
        row,
        column: null,
        code: 'serial-on-file',
        detail: [appliance.serial, found[0]?.where].filter(Boolean).join(', '),
      });
    }
    if (customer === null && applianceId === null) return null;
    appliances.push({ row, ofSite: applianceId === null ? ofSite : null, applianceId, appliance });
    applianceOf.set(key, appliances.length - 1);
    return appliances.length - 1;
  }

  function whichOnFile(
    row: number,
    { serial }: ImportAppliance,
    found: readonly KnownAppliance[],
    decided: string | null | undefined,
  ): string | null {
    const chosen = decided == null ? found : found.filter(({ applianceId }) => applianceId === decided);
    const [only, another] = chosen;
    if (only !== undefined && another === undefined) return only.applianceId;
    issues.push({
      row,
      column: null,
      code: only === undefined ? 'serial-not-on-file' : 'serial-of-several',
      detail: serial,
    });
    return null;
  }
}

/** What the later row leaves out contradicts nothing. */
function contradicts(first: ImportCustomer, later: ImportCustomer): boolean {
  return (Object.keys(later) as (keyof ImportCustomer)[]).some(
    (key) => later[key] !== null && later[key] !== first[key],
  );
}
