/** The places in the side column, in the order of the working day, with the key that leads there after `g`. */
import type { StaffRole } from '../../domain/vocabulary/people.ts';
import type { ScreenName } from '../route.ts';

export type PlaceEntry = {
  readonly screen: PlaceName;
  readonly label: string;
  readonly key: string;
  /** Not shown to others: the core would refuse them. */
  readonly onlyFor?: readonly StaffRole[];
  /** Screens that belong under it, so that the column shows where one is. */
  readonly holds: readonly ScreenName[];
};

type PlaceName =
  | 'today'
  | 'jobs'
  | 'board'
  | 'planning'
  | 'phone'
  | 'visits'
  | 'customers'
  | 'appliances'
  | 'deadlines'
  | 'service-due'
  | 'registrations'
  | 'recalls'
  | 'people'
  | 'instruments'
  | 'sheets'
  | 'claims'
  | 'imports'
  | 'worksheets'
  | 'backups'
  | 'settings';

export const PLACES: readonly PlaceEntry[] = [
  { screen: 'today', label: 'Today', key: 't', holds: [] },
  { screen: 'jobs', label: 'Jobs to book', key: 'j', holds: ['job', 'wasted-trips'] },
  { screen: 'phone', label: 'On the phone', key: 'h', onlyFor: ['owner', 'dispatcher'], holds: [] },
  { screen: 'board', label: 'Board', key: 'o', onlyFor: ['owner', 'dispatcher'], holds: [] },
  { screen: 'planning', label: 'Plan the days', key: 'n', onlyFor: ['owner', 'dispatcher'], holds: [] },
  { screen: 'visits', label: 'Diary', key: 'd', holds: ['visit'] },
  {
    screen: 'customers',
    label: 'Customers',
    key: 'c',
    holds: ['customer', 'new-customer', 'edit-customer', 'new-site', 'site', 'edit-site', 'gas-supply'],
  },
  {
    screen: 'appliances',
    label: 'Appliances',
    key: 'a',
    holds: ['appliance', 'new-appliance', 'edit-appliance', 'appliance-history'],
  },
  { screen: 'deadlines', label: 'Deadlines', key: 'l', holds: ['packet-batches', 'packet-batch'] },
  { screen: 'service-due', label: 'Service due', key: 'v', holds: ['messages'] },
  { screen: 'registrations', label: 'Registrations', key: 'r', holds: ['registration'] },
  { screen: 'recalls', label: 'Notices', key: 'u', holds: ['recall'] },
  { screen: 'claims', label: 'Claims', key: 'k', holds: [] },
  { screen: 'people', label: 'People', key: 'p', holds: ['staff-member'] },
  { screen: 'instruments', label: 'Instruments', key: 'i', holds: [] },
  { screen: 'sheets', label: 'Model sheets', key: 'm', holds: ['sheet'] },
  { screen: 'imports', label: 'Import, export', key: 'x', onlyFor: ['owner', 'dispatcher'], holds: [] },
  { screen: 'worksheets', label: 'Worksheets', key: 'w', holds: ['worksheet'] },
  { screen: 'backups', label: 'Backups', key: 'b', onlyFor: ['owner', 'dispatcher'], holds: [] },
  { screen: 'settings', label: 'Settings', key: 's', holds: [] },
];
