/**
 * Where in the app a person is, as a typed hash: `#/customers/0190…`. The table below is the only list of screens; links,
 * the current place and the back button all come from it.
 */
import { useSyncExternalStore } from 'react';

export const ROUTES = {
  today: '/',
  customers: '/customers',
  'new-customer': '/customers/new/:typed?',
  customer: '/customers/:customerId',
  'edit-customer': '/customers/:customerId/edit',
  'new-site': '/customers/:customerId/new-site',
  site: '/sites/:siteId',
  'edit-site': '/sites/:siteId/edit',
  'gas-supply': '/sites/:siteId/gas',
  'new-appliance': '/sites/:siteId/new-appliance',
  appliances: '/appliances',
  appliance: '/appliances/:applianceId',
  'edit-appliance': '/appliances/:applianceId/edit',
  'appliance-history': '/appliances/:applianceId/history',
  'transfer-site': '/sites/:siteId/new-owner',
  claims: '/claims',
  jobs: '/jobs',
  'wasted-trips': '/jobs/wasted-trips',
  job: '/jobs/:jobId',
  board: '/board/:day?',
  planning: '/planning',
  phone: '/phone/:customerId?',
  visits: '/visits/:day?',
  visit: '/visit/:visitId',
  run: '/run/:visitId/:runId/:stepKey?',
  deadlines: '/deadlines',
  'packet-batches': '/packets',
  'packet-batch': '/packets/:batchId',
  'service-due': '/service-due',
  messages: '/messages',
  recalls: '/notices',
  recall: '/notices/:recallId',
  registrations: '/registrations',
  registration: '/registrations/:applianceId',
  people: '/people',
  'staff-member': '/people/:staffId',
  instruments: '/instruments',
  sheets: '/sheets',
  sheet: '/sheets/:sheetId/:revision?',
  paper: '/paper/:visitId/:runId',
  photos: '/photos/:visitId/:runId',
  'sheet-draft': '/sheet-drafts/:draftId/:part?/:field?',
  imports: '/imports',
  worksheets: '/worksheets',
  worksheet: '/worksheet/:worksheetKey/:visitId?/:runId?',
  backups: '/backups',
  settings: '/settings',
} as const;

export type ScreenName = keyof typeof ROUTES;

type Segments<P extends string> = P extends `/${infer Head}/${infer Rest}`
  ? Head | Segments<`/${Rest}`>
  : P extends `/${infer Only}`
    ? Only
    : never;
type Required<S extends string> = S extends `:${infer Name}` ? (Name extends `${string}?` ? never : Name) : never;
type Optional<S extends string> = S extends `:${infer Name}?` ? Name : never;

export type RouteParams<N extends ScreenName> = {
  readonly [Name in Required<Segments<(typeof ROUTES)[N]>>]: string;
} & { readonly [Name in Optional<Segments<(typeof ROUTES)[N]>>]?: string | null };

export type Route = { [N in ScreenName]: { readonly screen: N; readonly params: RouteParams<N> } }[ScreenName];
export type Place = Route | { readonly screen: 'unknown'; readonly params: { readonly hash: string } };

/** The hash that leads to a screen. */
export function hashFor<N extends ScreenName>(screen: N, params: RouteParams<N>): string {
  const given: Readonly<Record<string, string | null | undefined>> = params;
  const parts = segmentsOf(ROUTES[screen]).flatMap((segment) => {
    if (!segment.startsWith(':')) return [segment];
    const value = given[nameOf(segment)];
    return value === undefined || value === null ? [] : [encodeURIComponent(value)];
  });
  return `#/${parts.join('/')}`;
}

/** Which screen a hash means. A fixed word wins over a parameter: `/customers/new` is no customer called "new". */
export function readHash(hash: string): Place {
  const given = hash
    .replace(/^#?\/?/, '')
    .split('/')
    .filter(Boolean);
  const matches = (Object.keys(ROUTES) as ScreenName[]).flatMap((screen) => {
    const params = matchSegments(segmentsOf(ROUTES[screen]), given);
    return params === null ? [] : [{ screen, params }];
  });
  const best = matches.sort((a, b) => Object.keys(a.params).length - Object.keys(b.params).length)[0];
  // The parameters were matched against this very screen's pattern.
  return best ? (best as Route) : { screen: 'unknown', params: { hash } };
}

export function goTo<N extends ScreenName>(screen: N, params: RouteParams<N>): void {
  window.location.hash = hashFor(screen, params);
}

/** Replaces the current place: "back" does not return to it. */
export function replaceWith<N extends ScreenName>(screen: N, params: RouteParams<N>): void {
  window.location.replace(hashFor(screen, params));
}

export function usePlace(): Place {
  return readHash(useSyncExternalStore(listenToHash, () => window.location.hash));
}

function listenToHash(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

function segmentsOf(pattern: string): readonly string[] {
  return pattern.split('/').filter(Boolean);
}

function nameOf(segment: string): string {
  return segment.replace(/^:/, '').replace(/\?$/, '');
}

function matchSegments(pattern: readonly string[], given: readonly string[]): Record<string, string> | null {
  if (given.length > pattern.length) return null;
  const params: Record<string, string> = {};
  for (const [index, segment] of pattern.entries()) {
    const value = given[index];
    if (value === undefined) {
      if (!segment.endsWith('?')) return null;
    } else if (segment.startsWith(':')) {
      const decoded = decode(value);
      if (decoded === null) return null;
      params[nameOf(segment)] = decoded;
    } else if (segment !== value) {
      return null;
    }
  }
  return params;
}

function decode(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}
