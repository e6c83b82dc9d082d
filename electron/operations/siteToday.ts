/** Today where the site is; of what stands at no site, today where the firm is. */
import { findSite } from '../../db/sites.ts';
import { companyToday } from './companyToday.ts';
import type { HandlerContext } from './handler.ts';
import { dayIn } from './today.ts';

export function siteToday(context: HandlerContext, siteId: string | null): string {
  const timeZone = siteId === null ? null : (findSite(context.db, siteId)?.timeZone ?? null);
  return timeZone === null ? companyToday(context) : dayIn(timeZone, context.now);
}
