/** What a plan can do wrong, by the rule it breaks, as data. */
import type { Score } from '../plan.ts';

export type Violation =
  /** Each visit once, in a route or among those left out. */
  | { readonly code: 'visit-unknown' | 'visit-twice' | 'visit-not-accounted'; readonly visitId: string }
  | { readonly code: 'day-unknown'; readonly technicianId: string; readonly date: string }
  | { readonly code: 'route-twice'; readonly technicianId: string; readonly date: string }
  /** Whoever goes has what the visit needs, valid on that day. */
  | { readonly code: 'skill-lacking'; readonly visitId: string; readonly skill: string }
  /** A start inside what was agreed. */
  | { readonly code: 'outside-windows'; readonly visitId: string }
  /** Ways there and home within the working hours. */
  | { readonly code: 'outside-hours'; readonly visitId: string }
  | { readonly code: 'home-too-late'; readonly technicianId: string; readonly date: string; readonly homeMin: number }
  /** Time enough for the work, and for the way from the place before. */
  | { readonly code: 'not-enough-time-to-get-there'; readonly visitId: string; readonly lackingMin: number }
  | { readonly code: 'wrong-times'; readonly visitId: string }
  /** What the dispatcher pinned stays. */
  | { readonly code: 'pin-broken'; readonly visitId: string; readonly field: 'technician' | 'date' | 'start' }
  /** What has begun or was promised is neither moved nor overlapped. */
  | { readonly code: 'fixed-moved' | 'fixed-time-taken'; readonly visitId: string }
  /** Nobody works or drives on a day off or through a break. */
  | { readonly code: 'technician-absent'; readonly technicianId: string; readonly date: string }
  | { readonly code: 'on-a-break'; readonly visitId: string }
  /** After the visit it waits for. */
  | { readonly code: 'before-the-earlier-visit'; readonly visitId: string; readonly afterVisitId: string }
  | { readonly code: 'reason-missing' | 'reason-not-confirmed'; readonly visitId: string }
  | { readonly code: 'score-differs'; readonly counted: Score };
