/** Day sheets, week overviews and calendar files, made from the same rows the board shows. */
import { Temporal } from 'temporal-polyfill';
import { findCompany, findStaff } from '../../db/people.ts';
import { listSitePlaces } from '../../db/planning.ts';
import { listCrews, listVisits } from '../../db/visits.ts';
import { boardStart } from '../../domain/schedule/wallClock.ts';
import { absencesOn } from '../../domain/schedule/workSpans.ts';
import type { BoardVisit } from '../contract/board.ts';
import { blocksPdf } from '../documents/blocksPdf.ts';
import { daySheetBlocks } from '../documents/daySheet/daySheetBlocks.ts';
import { weekOverviewBlocks } from '../documents/daySheet/weekOverviewBlocks.ts';
import { weekdayText } from '../documents/documentDates.ts';
import type { Block } from '../documents/page/blocks.ts';
import { type CalendarVisit, visitCalendar } from '../documents/visitCalendar.ts';
import { readBoardVisits } from './boardRows.ts';
import { companyToday } from './companyToday.ts';
import { jobText, readDaySheet } from './daySheetFacts.ts';
import { type HandlerContext, type Handlers, notFound } from './handler.ts';
import { keepMade } from './keepMade.ts';
import { readWorkers } from './workers.ts';

export const outputHandlers: Handlers<'daySheets.build' | 'weekOverviews.build' | 'calendars.export'> = {
  'daySheets.build': async (input, context) => {
    const person = findStaff(context.db, input.staffId) ?? notFound('staff', input.staffId);
    const sheet = readDaySheet(context.db, input.staffId, input.on);
    const title = `Day sheet, ${person.name}, ${weekdayText(input.on)}`;
    const attachmentId = await keepPdf(context, {
      title,
      fileName: `day-${input.on}-${person.initials}.pdf`,
      subject: 'day-sheet',
      blocks: daySheetBlocks(sheet),
    });
    return { attachmentId, visitCount: sheet.stops.length };
  },

  'weekOverviews.build': async (input, context) => {
    const days = Array.from({ length: 7 }, (_, index) => Temporal.PlainDate.from(input.from).add({ days: index }));
    const to = days.at(-1)?.toString() ?? input.from;
    const visits = readBoardVisits(context.db, { from: input.from, to }, companyToday(context));
    const people = readWorkers(context.db, { from: input.from, to });
    const title = `Week of ${weekdayText(input.from)}`;
    const attachmentId = await keepPdf(context, {
      title,
      fileName: `week-${input.from}.pdf`,
      subject: 'week-overview',
      blocks: weekOverviewBlocks({
        companyName: companyOf(context).name,
        title,
        days: days.map((day) => {
          const on = day.toString();
          return {
            dayText: weekdayText(on),
            away: people.flatMap(({ name, absences }) =>
              absencesOn(absences, on).map(({ reason }) => `${name}, ${reason}`),
            ),
            visits: visits
              .filter((visit) => visit.plannedOn === on)
              .toSorted((a, b) => (boardStart(a) ?? 0) - (boardStart(b) ?? 0))
              .map(toOverviewRow),
          };
        }),
      }),
    });
    return { attachmentId };
  },

  'calendars.export': (input, context) => {
    const person = findStaff(context.db, input.staffId) ?? notFound('staff', input.staffId);
    const visits = readCalendarVisits(context, input);
    return {
      fileName: `visits-${person.initials}-${input.from}.ics`,
      text: visitCalendar(`Visits of ${person.name}`, visits, context.now),
      visitCount: visits.length,
    };
  },
};

function readCalendarVisits(
  context: HandlerContext,
  input: { readonly staffId: string; readonly from: string; readonly to: string },
): readonly CalendarVisit[] {
  const { db } = context;
  const rows = listVisits(db, input);
  const crews = Map.groupBy(
    listCrews(
      db,
      rows.map(({ visit }) => visit.id),
    ),
    ({ crew }) => crew.visitId,
  );
  const shown = new Map(readBoardVisits(db, input, companyToday(context)).map((visit) => [visit.visitId, visit]));
  const places = new Map(
    listSitePlaces(
      db,
      rows.map(({ visit }) => visit.siteId),
    ).map((row) => [row.siteId, row]),
  );
  return rows
    .filter(({ visit }) => crews.get(visit.id)?.some(({ crew }) => crew.staffId === input.staffId))
    .map(({ visit, customerName, street, city }) => ({
      visitId: visit.id,
      revision: visit.revision,
      on: visit.plannedOn,
      startMin: boardStart(visit),
      durationMin: visit.durationMin,
      timeZone: places.get(visit.siteId)?.timeZone ?? companyOf(context).timeZone,
      summary: [(shown.get(visit.id)?.jobs ?? []).map(jobText).join(' + '), customerName].filter(Boolean).join(': '),
      location: `${street}, ${city}`,
      description: places.get(visit.siteId)?.access ?? '',
      isPencilled: visit.state === 'pencilled',
      isCancelled: visit.state === 'cancelled',
    }));
}

function toOverviewRow(visit: BoardVisit) {
  const fromMin = boardStart(visit);
  return {
    fromMin,
    toMin: fromMin === null ? null : Math.min(1440, fromMin + visit.durationMin),
    crew: visit.crew.map(({ name }) => name).join(', '),
    customerName: visit.customerName,
    address: `${visit.street}, ${visit.city}`,
    what: visit.jobs.map(jobText).join(' + '),
    state: visit.state,
  };
}

export async function keepPdf(
  context: HandlerContext,
  document: {
    readonly title: string;
    readonly fileName: string;
    readonly subject: string;
    readonly blocks: readonly Block[];
  },
): Promise<string> {
  const company = companyOf(context);
  const bytes = await blocksPdf({
    blocks: document.blocks,
    images: new Map(),
    title: document.title,
    author: company.name,
    language: company.language as 'en' | 'fr' | 'es',
    country: company.country,
    madeAt: context.now,
    footer: document.title,
  });
  const { fileName, subject } = document;
  return keepMade(context, { bytes, mediaType: 'application/pdf', fileName, subject });
}

function companyOf(context: HandlerContext) {
  return findCompany(context.db) ?? notFound('companies', 'this');
}
