/** The years of one appliance, for its history and for whoever services it. */
import { findAppliance } from '../../db/appliances.ts';
import { readDueFacts } from '../../db/dues/readDueFacts.ts';
import { listPastRuns } from '../../db/pastRuns.ts';
import { findLastPlacement } from '../../db/placements.ts';
import { findNewestRevision } from '../../db/sheets.ts';
import { findSite } from '../../db/sites.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { explainService } from '../../domain/service/explainService.ts';
import { nextService, type ServiceFacts } from '../../domain/service/nextService.ts';
import { type HandlerContext, type Handlers, notFound } from './handler.ts';

export const serviceHandlers: Handlers<'service.getTrends' | 'service.getDue'> = {
  'service.getTrends': (input, context) => {
    const appliance = findAppliance(context.db, input.applianceId) ?? notFound('appliances', input.applianceId);
    const revision = appliance.sheetId === null ? undefined : findNewestRevision(context.db, appliance.sheetId);
    const sheet = revision === undefined ? null : (revision.body as ModelSheet);
    return {
      runs: [...listPastRuns(context.db, appliance.id, timeZoneOf(context, appliance.id), null)],
      firingPoints: sheet?.firingPoints.map(({ key, label }) => ({ key, label })) ?? [],
      limits: sheet === null ? [] : [...sheet.limits],
      sheetTitle: sheet?.title ?? null,
    };
  },

  'service.getDue': (input, context) => {
    const [source] = readDueFacts(context.store.raw, [input.applianceId], context.now);
    if (source === undefined) return notFound('appliances', input.applianceId);
    const { servicesOn } = source.facts;
    const today = dayAt(source.timeZone, context.now);
    return {
      today,
      lastOn: servicesOn.toSorted().at(-1) ?? null,
      next: explained(source.facts),
      ifDoneToday: explained({ ...source.facts, servicesOn: [...servicesOn, today] }),
    };
  },
};

function explained(facts: ServiceFacts) {
  const next = nextService(facts);
  if (next === null) return null;
  const { demands, ...days } = explainService(next);
  return { ...days, demands: [...demands] };
}

function timeZoneOf(context: HandlerContext, applianceId: string): string {
  const siteId = findLastPlacement(context.db, applianceId)?.siteId;
  return (siteId === undefined ? undefined : findSite(context.db, siteId)?.timeZone) ?? 'UTC';
}
