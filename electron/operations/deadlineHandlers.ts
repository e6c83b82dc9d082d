/** Registrations by their last day, read from the table of what falls due. */
import { countByZoneAndDay, countDeadlines, cursorAfter, type DueFilter, listDues } from '../../db/dues/listDues.ts';
import { readDueFacts } from '../../db/dues/readDueFacts.ts';
import { countRebuilt, rebuildDuesAfter } from '../../db/dues/refreshDues.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import { deadlineAlarm } from '../../domain/coverage/deadlineAlarm.ts';
import { addDays, daysFromTo } from '../../domain/coverage/period.ts';
import { registrationDerivation, registrationDue } from '../../domain/coverage/registrationDeadline.ts';
import type { DEADLINE_FILTERS } from '../contract/dues.ts';
import { countGaps, PAGE_BUDGET_MS } from './countGaps.ts';
import type { Handlers } from './handler.ts';

export const deadlineHandlers: Handlers<'deadlines.list' | 'deadlines.get' | 'dues.rebuild'> = {
  'deadlines.list': (input, context) => {
    const { raw } = context.store;
    const uncounted = countGaps(context, PAGE_BUDGET_MS);
    const found = listDues(raw, {
      kinds: ['registration'],
      ...shownBy(input.show, context.now),
      ...(input.week === null ? {} : { dueFrom: input.week, dueBefore: addDays(input.week, 7) }),
      today: context.now.slice(0, 10),
      staffId: input.staffId ?? undefined,
      maker: input.maker ?? undefined,
      limit: input.limit,
      after: input.after,
    });
    const facts = new Map(
      readDueFacts(
        raw,
        found.map(({ applianceId }) => applianceId),
        context.now,
      ).map((one) => [one.applianceId, one.facts]),
    );
    const rows = found.flatMap((row) => {
      const of = facts.get(row.applianceId);
      const due = of === undefined ? null : registrationDue(of);
      const today = dayAt(row.timeZone, context.now);
      if (of === undefined || due === null || (input.show === 'late' && row.dueOn >= today)) return [];
      const alarm = deadlineAlarm({ countedFromOn: row.windowFrom, dueOn: row.dueOn, today });
      if (input.show === 'pressing' && alarm === 'none') return [];
      const isReady = row.stage === 'recording' && row.isSealed === 1 && row.gapCount === 0;
      return [
        {
          ...placeOf(row),
          stage: isReady ? ('ready' as const) : (row.stage ?? 'not-begun'),
          dueOn: row.dueOn,
          daysLeft: daysFromTo(today, row.dueOn),
          alarm,
          sureness: row.sureness,
          derivation: registrationDerivation(of.cover, due),
          technicianName: row.technicianName,
          missingCount: row.stage === 'recording' ? row.gapCount : 0,
          runId: row.runId,
          visitId: row.visitId,
        },
      ];
    });
    return { rows, next: nextOf(found, input.limit), uncounted };
  },

  'deadlines.get': (input, context) => {
    const { raw } = context.store;
    const counts = countDeadlines(raw, { ...input, today: context.now.slice(0, 10) });
    const mayBeOver = countByZoneAndDay(raw, { ...input, before: dayAt(FIRST_ZONE, context.now) });
    return {
      ...counts,
      weeks: [...counts.weeks],
      technicians: [...counts.technicians],
      makers: [...counts.makers],
      toSubmit: counts.weeks.reduce((sum, { count }) => sum + count, 0),
      late: mayBeOver
        .filter(({ timeZone, dueOn }) => dueOn < dayAt(timeZone, context.now))
        .reduce((sum, { count }) => sum + count, 0),
    };
  },

  'dues.rebuild': (input, context) => {
    const { raw } = context.store;
    context.store.requireFree();
    const next = raw.transaction(() => rebuildDuesAfter(raw, context.now, input.after, REBUILD_STEP)).immediate();
    if (next === null) context.services.changed(['registrations']);
    return { next, ...countRebuilt(raw, next) };
  },
};

/** Some 60 ms a step: a bar moves, and stopping takes effect at once. */
const REBUILD_STEP = 1000;

/** Where a day begins first: a last day that is not over there is over nowhere. */
const FIRST_ZONE = 'Pacific/Kiritimati';

function shownBy(
  show: (typeof DEADLINE_FILTERS)[number],
  now: string,
): Pick<DueFilter, 'isOpen' | 'stage' | 'isReady' | 'dueBefore' | 'isToSubmit' | 'halfOverBy'> {
  switch (show) {
    case 'open':
      return { isOpen: true };
    case 'to-submit':
      return { isOpen: true, isToSubmit: true };
    case 'pressing':
      // By the day where it is latest: whether it really is, the alarm says.
      return { isOpen: true, isToSubmit: true, halfOverBy: dayAt(FIRST_ZONE, now) };
    case 'late':
      return { isOpen: true, isToSubmit: true, dueBefore: dayAt(FIRST_ZONE, now) };
    case 'confirmed':
      return { isOpen: false };
    case 'recording':
      return { isOpen: true, stage: 'recording', isReady: false };
    case 'ready':
      return { isOpen: true, stage: 'recording', isReady: true };
    default:
      return { isOpen: true, stage: show };
  }
}

type Placed = Parameters<typeof cursorAfter>[0];

export function placeOf(row: Placed) {
  const { applianceId, serial, maker, model, siteId, street, postcode, city, customerId, customerName } = row;
  return { applianceId, serial, maker, model, siteId, street, postcode, city, customerId, customerName };
}

export function nextOf(rows: readonly Placed[], limit: number): string | null {
  const last = rows.at(-1);
  return rows.length < limit || last === undefined ? null : cursorAfter(last);
}
