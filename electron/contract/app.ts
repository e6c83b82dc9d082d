/** The app itself: first run, demo, who is working, and what is wrong with the place the data lies in. */
import { z } from 'zod';
import { LANGUAGES, STAFF_ROLES, UNIT_SYSTEMS } from '../../domain/vocabulary/people.ts';
import { copyTrouble } from './backups.ts';
import { day, id, line, nothing, operation, optionalLine } from './operation.ts';

export const unitSystem = z.enum(UNIT_SYSTEMS);
export const language = z.enum(LANGUAGES);
export const pin = z.string().regex(/^\d{4,8}$/, 'four to eight digits');

export const companyProfile = z.strictObject({
  name: line,
  street: optionalLine,
  postcode: optionalLine,
  city: optionalLine,
  region: optionalLine,
  country: z.string().regex(/^[A-Z]{2}$/, 'two letters, as in ISO 3166'),
  phone: optionalLine,
  email: z.email().nullable(),
  licenceNumber: optionalLine,
  timeZone: line,
  unitSystem,
  language,
  /** Decides which safety ceilings and relief rule apply: `north-america`, `europe`, or a place of its own. */
  jurisdiction: line,
  emergencyNumber: optionalLine,
});
export type CompanyProfile = z.output<typeof companyProfile>;

export const person = z.strictObject({
  staffId: id,
  name: z.string(),
  initials: z.string(),
  roles: z.array(z.enum(STAFF_ROLES)),
});
export type Person = z.output<typeof person>;

export const storeWarning = z.enum([
  'network-folder',
  'synchronised-folder',
  'clock-before-last-change',
  'no-backup-today',
  'second-place-behind',
  /** One was tried out and cannot be gone back to. */
  'backup-does-not-hold',
  'list-under-way',
  'list-cut-off',
]);

export type StoreWarning = z.output<typeof storeWarning>;

export const appOperations = {
  'app.status': operation({
    access: 'public',
    input: nothing,
    output: z.strictObject({
      /** `empty`: first run is needed. */
      store: z.enum(['empty', 'ready']),
      isDemo: z.boolean(),
      company: companyProfile.nullable(),
      people: z.array(person),
      signedIn: person.nullable(),
      /** The signed-in person's own choice, else the company's. */
      unitSystem,
      dataFolder: z.string(),
      warnings: z.array(storeWarning),
      /** Why no backup could be made; null: one could, or none was tried yet. */
      copyTrouble: copyTrouble.nullable(),
      version: z.string(),
      today: day,
    }),
  }),
  /** Company and people in one go; refused once a company exists. The first person must be an owner. */
  'app.completeFirstRun': operation({
    access: 'public',
    input: z.strictObject({
      company: companyProfile,
      people: z
        .array(z.strictObject({ name: line, initials: line, roles: z.array(z.enum(STAFF_ROLES)).min(1), pin }))
        .min(1)
        .max(50),
    }),
    output: z.strictObject({ people: z.array(person) }),
    errors: {
      'already-set-up': nothing,
      'no-owner': nothing,
      'unknown-time-zone': z.strictObject({ timeZone: z.string() }),
    },
  }),
  /** Opens the demo's own store, made afresh when missing; the real store is closed and untouched. */
  'app.openDemo': operation({ access: 'public', input: nothing, output: nothing }),
  'app.leaveDemo': operation({ access: 'public', input: nothing, output: nothing, errors: { 'not-in-demo': nothing } }),
  'session.signIn': operation({
    access: 'public',
    input: z.strictObject({ staffId: id, pin }),
    output: person,
    errors: { 'wrong-pin': z.strictObject({ waitS: z.number() }) },
  }),
  'session.signOut': operation({ access: 'signed-in', input: nothing, output: nothing }),
  'session.chooseUnits': operation({ access: 'signed-in', input: z.strictObject({ unitSystem }), output: nothing }),
  'company.update': operation({
    access: ['owner', 'dispatcher'],
    input: companyProfile,
    output: nothing,
    errors: { 'unknown-time-zone': z.strictObject({ timeZone: z.string() }) },
  }),
} as const;
