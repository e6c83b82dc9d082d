/** First run, demo, sign-in and the company's own profile. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lastChangeMs, storeMadeAt } from '../../db/device.ts';
import { listListWorks } from '../../db/imports.ts';
import { findCompany, findStaff, listStaff } from '../../db/people.ts';
import { companies, staff, staffRoles } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { isTimeZone } from '../../domain/text/isTimeZone.ts';
import type { StaffRole } from '../../domain/vocabulary/people.ts';
import type { CompanyProfile, Person, StoreWarning } from '../contract/app.ts';
import type { SecondPlaceState } from '../secondPlaceKeeper.ts';
import { companyToday } from './companyToday.ts';
import { folderWarnings } from './folderWarnings.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { hashPin, isPin } from './pins.ts';
import { addShippedSheets } from './shippedSheets.ts';
import { dayIn } from './today.ts';

export const appHandlers: Handlers<
  | 'app.status'
  | 'app.completeFirstRun'
  | 'app.openDemo'
  | 'app.leaveDemo'
  | 'session.signIn'
  | 'session.signOut'
  | 'session.chooseUnits'
  | 'company.update'
> = {
  'app.status': (_input, context) => {
    const company = findCompany(context.db);
    const own = context.actor === null ? undefined : findStaff(context.db, context.actor.staffId);
    const companyUnits = (company?.unitSystem ?? 'metric') as 'metric' | 'us';
    const today = dayIn(company?.timeZone ?? 'UTC', context.now);
    return {
      store: company === undefined ? 'empty' : 'ready',
      isDemo: context.services.isDemo(),
      company: company === undefined ? null : toProfile(company),
      people:
        company === undefined
          ? []
          : listStaff(context.db)
              .filter((row) => isActive(row, today))
              .map(toPerson),
      signedIn: own === undefined ? null : toPerson(own),
      unitSystem: (own?.unitSystem as 'metric' | 'us' | null | undefined) ?? companyUnits,
      dataFolder: context.services.dataFolder,
      warnings: [...folderWarnings(context.services.dataFolder), ...storeWarnings(context, company !== undefined)],
      copyTrouble: context.services.isDemo() ? null : context.services.dailyCopies.failure(),
      version: appVersion(context.services.appRoot),
      today,
    };
  },

  'app.completeFirstRun': (input, context) => {
    if (findCompany(context.db) !== undefined) return fail('already-set-up', {});
    if (!input.people.some((one) => one.roles.includes('owner'))) return fail('no-owner', {});
    requireTimeZone(input.company.timeZone);
    const today = dayIn(input.company.timeZone, context.now);
    const people = context.write((writer) => {
      writer.insert(companies, input.company);
      addShippedSheets(writer, context.services.appRoot);
      return input.people.map((one) => {
        const staffId = writer.insert(staff, {
          name: one.name,
          initials: one.initials,
          pinHash: hashPin(one.pin),
          activeFrom: today,
        });
        setRoles(writer, staffId, [], one.roles);
        return { staffId, name: one.name, initials: one.initials, roles: one.roles };
      });
    });
    context.services.changed(['app']);
    return { people };
  },

  'app.openDemo': (_input, context) => {
    context.services.switchStore('demo');
    return {};
  },

  'app.leaveDemo': (_input, context) => {
    if (!context.services.isDemo()) return fail('not-in-demo', {});
    context.services.switchStore('real');
    return {};
  },

  'session.signIn': (input, context) => {
    const { pinGuard } = context.services;
    const waitS = pinGuard.waitS(input.staffId);
    if (waitS > 0) return fail('wrong-pin', { waitS });
    const row = findStaff(context.db, input.staffId);
    const today = companyToday(context);
    if (row === undefined || !isActive(row, today)) return notFound('staff', input.staffId);
    if (!isPin(input.pin, row.pinHash)) {
      pinGuard.wrong(input.staffId);
      return fail('wrong-pin', { waitS: pinGuard.waitS(input.staffId) });
    }
    pinGuard.right(input.staffId);
    context.services.signIn(context.clientId, row.id);
    return toPerson(row);
  },

  'session.signOut': (_input, context) => {
    context.services.signIn(context.clientId, null);
    return {};
  },

  'session.chooseUnits': (input, context) => {
    context.write((writer) => writer.update(staff, actorOf(context).staffId, { unitSystem: input.unitSystem }));
    context.services.changed(['app']);
    return {};
  },

  'company.update': (input, context) => {
    requireTimeZone(input.timeZone);
    const company = findCompany(context.db);
    if (company === undefined) return notFound('companies', 'this');
    context.write((writer) => writer.update(companies, company.id, input));
    context.services.changed(['app']);
    return {};
  },
};

/** Roles are rows of their own: only the difference is written. */
export function setRoles(
  writer: StoreWriter,
  staffId: string,
  current: readonly { id: string; role: string }[],
  wanted: readonly StaffRole[],
): void {
  for (const row of current) if (!wanted.includes(row.role as StaffRole)) writer.remove(staffRoles, row.id);
  for (const role of new Set(wanted)) {
    if (!current.some((row) => row.role === role)) writer.insert(staffRoles, { staffId, role });
  }
}

export function isActive(
  row: { readonly activeFrom: string; readonly activeTo: string | null },
  today: string,
): boolean {
  return row.activeFrom <= today && (row.activeTo === null || row.activeTo >= today);
}

function requireTimeZone(timeZone: string): void {
  if (!isTimeZone(timeZone)) fail('unknown-time-zone', { timeZone });
}

function toPerson(row: { id: string; name: string; initials: string; roles: readonly string[] }): Person {
  return { staffId: row.id, name: row.name, initials: row.initials, roles: row.roles as StaffRole[] };
}

export function toProfile(row: typeof companies.$inferSelect): CompanyProfile {
  const { id: _id, unitSystem, language, latitude: _lat, longitude: _lon, ...others } = row;
  const { travelRoadFactor: _factor, travelSpeedKmPerH: _speed, ...rest } = others;
  return { ...rest, unitSystem: unitSystem as 'metric' | 'us', language: language as 'en' | 'fr' | 'es' };
}

function storeWarnings({ store, db, services, now }: HandlerContext, isSetUp: boolean): readonly StoreWarning[] {
  const warnings: StoreWarning[] = [];
  // A minute of grace: laptops correct their clocks by seconds all the time.
  if (lastChangeMs(store.raw) > Date.parse(now) + 60_000) warnings.push('clock-before-last-change');
  // A firm set up this morning owes no copy yet: its first comes by itself within the hour.
  const newest = services.backups.list()[0]?.madeAt ?? storeMadeAt(store.raw);
  const dayMs = 86_400_000;
  // A copy that could not be made says so itself, with the reason.
  const isOwed = isSetUp && !services.isDemo() && services.dailyCopies.failure() === null;
  if (isOwed && Date.parse(now) - Date.parse(newest) > dayMs) warnings.push('no-backup-today');
  if (!services.isDemo() && isBehind(services.secondPlace.state(), now)) warnings.push('second-place-behind');
  if (!services.isDemo() && (services.rehearsal.last()?.problem ?? null) !== null)
    warnings.push('backup-does-not-hold');
  const going = services.listWorks.going();
  if (going !== null) warnings.push('list-under-way');
  if (listListWorks(db).some(({ work }) => work.id !== going)) warnings.push('list-cut-off');
  return warnings;
}

/** A stick that was left in the office for an afternoon is no news; after a day it is. */
function isBehind(state: SecondPlaceState | null, now: string): boolean {
  if (state?.trouble == null) return false;
  return state.lastAt === null || Date.parse(now) - Date.parse(state.lastAt) > 86_400_000;
}

function appVersion(appRoot: string): string {
  return (JSON.parse(readFileSync(join(appRoot, 'package.json'), 'utf8')) as { version: string }).version;
}
