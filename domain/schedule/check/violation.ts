/** What a plan can do wrong, by the rule it breaks (H1–H9 of the planner's rules), as data. */
import type { Score } from '../plan.ts';

export type Violation =
  /** H1 and the books: each visit once, in a route or among those left out. */
  | { readonly code: 'visit-unknown' | 'visit-twice' | 'visit-not-accounted'; readonly visitId: string }
  | { readonly code: 'day-unknown'; readonly technicianId: string; readonly date: string }
  | { readonly code: 'route-twice'; readonly technicianId: string; readonly date: string }
  /** H2 */
  | { readonly code: 'skill-lacking'; readonly visitId: string; readonly skill: string }
  /** H3 */
  | { readonly code: 'outside-windows'; readonly visitId: string }
  /** H4 */
  | { readonly code: 'outside-hours'; readonly visitId: string }
  | { readonly code: 'home-too-late'; readonly technicianId: string; readonly date: string; readonly homeMin: number }
  /** H5 */
  | { readonly code: 'not-enough-time-to-get-there'; readonly visitId: string; readonly lackingMin: number }
  | { readonly code: 'wrong-times'; readonly visitId: string }
  /** H6 */
  | { readonly code: 'pin-broken'; readonly visitId: string; readonly field: 'technician' | 'date' | 'start' }
  /** H7 */
  | { readonly code: 'fixed-moved' | 'fixed-time-taken'; readonly visitId: string }
  /** H8 */
  | { readonly code: 'technician-absent'; readonly technicianId: string; readonly date: string }
  | { readonly code: 'on-a-break'; readonly visitId: string }
  /** H9 */
  | { readonly code: 'before-the-earlier-visit'; readonly visitId: string; readonly afterVisitId: string }
  | { readonly code: 'reason-missing' | 'reason-not-confirmed'; readonly visitId: string }
  | { readonly code: 'score-differs'; readonly counted: Score };
