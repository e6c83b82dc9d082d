/** The demo's own store, made afresh from the invented scenario; it never lies where a real store does. */
import { openStore, storePath } from '../../db/openStore.ts';
import { companies, staff } from '../../db/schema/index.ts';
import { setRoles } from './appHandlers.ts';
import { hashPin } from './pins.ts';
import { addShippedSheets } from './shippedSheets.ts';

export type DemoOptions = {
  readonly folder: string;
  readonly appRoot: string;
  readonly migrationsFolder: string;
  readonly now: string;
};

/** Everybody in the demo has this PIN; it is shown on its sign-in screen. */
export const DEMO_PIN = '1234';

export function buildDemoStore(options: DemoOptions): void {
  const store = openStore({
    path: storePath(options.folder),
    purpose: 'demo',
    migrationsFolder: options.migrationsFolder,
    now: options.now,
  });
  try {
    store.write({ actorId: null, now: options.now }, (writer) => {
      writer.insert(companies, {
        name: 'Harbour Lane Heating',
        street: '14 Harbour Lane',
        postcode: '00417',
        city: 'Tidewick',
        country: 'CA',
        timeZone: 'America/Halifax',
        unitSystem: 'metric',
        language: 'en',
        jurisdiction: 'north-america',
        emergencyNumber: '555 0100',
      });
      addShippedSheets(writer, options.appRoot, 'all');
      const staffId = writer.insert(staff, {
        name: 'Odile Marchbanks',
        initials: 'OM',
        pinHash: hashPin(DEMO_PIN),
        activeFrom: '2020-01-01',
      });
      setRoles(writer, staffId, [], ['owner', 'dispatcher', 'technician']);
    });
  } finally {
    store.close();
  }
}
