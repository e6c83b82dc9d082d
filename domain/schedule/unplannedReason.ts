/** Why a visit is not in the plan: facts with data; the words are made where they are shown. */

/** Why one technician cannot take a visit on one day, whatever else is planned. */
export type DayObstacle =
  | { readonly code: 'absent' }
  | { readonly code: 'skill-missing'; readonly skill: string }
  | { readonly code: 'skill-not-valid'; readonly skill: string; readonly validTo: string | null }
  | { readonly code: 'no-window-that-day' }
  /** A window that day, but none of it within the hours, the breaks and the ways there and back. */
  | { readonly code: 'window-outside-hours' }
  /** The pinned start lies in none of the windows. */
  | { readonly code: 'pinned-start-outside-windows' };

export type UnplannedReason =
  /** Pinned to a technician or a day that is not in the plan at all. */
  | { readonly code: 'pin-unknown'; readonly field: 'technician' | 'date' }
  /** Every technician-day the pins allow has an obstacle; counted by kind. */
  | {
      readonly code: 'nobody-can';
      readonly isPinned: boolean;
      readonly obstacles: readonly { readonly obstacle: DayObstacle; readonly days: number }[];
    }
  | { readonly code: 'earlier-visit-not-planned'; readonly afterVisitId: string }
  /** Technicians and days would do, but with what is planned there is no gap left. */
  | { readonly code: 'no-gap'; readonly candidateDays: number }
  /** Pinned, and the visits named hold the time; one of them or the pin must give way. */
  | { readonly code: 'pin-clash'; readonly withVisitIds: readonly string[] }
  /** Begun or finished, and what is recorded of it contradicts the technician's day: left as it is. */
  | { readonly code: 'fixed-does-not-fit' };
