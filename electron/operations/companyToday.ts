/** Today where the firm is: what it writes down of its own can't be of a day still to come. */
import { findCompany } from '../../db/people.ts';
import type { HandlerContext } from './handler.ts';
import { dayIn } from './today.ts';

export function companyToday(context: HandlerContext): string {
  return dayIn(findCompany(context.db)?.timeZone ?? 'UTC', context.now);
}
