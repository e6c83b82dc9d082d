/** When somebody works on one day: the hours of that weekday without the break and without what they are away for. */
import { Temporal } from 'temporal-polyfill';

export type WorkingHours = {
  /** As in ISO 8601: 1 is Monday. */
  readonly weekday: number;
  readonly fromMin: number;
  readonly toMin: number;
  readonly breakFromMin: number | null;
  readonly breakToMin: number | null;
};

export type Absence = {
  readonly fromOn: string;
  readonly toOn: string;
  /** Both null: the whole day. */
  readonly fromMin: number | null;
  readonly toMin: number | null;
  readonly reason: string;
};

export type Span = { readonly fromMin: number; readonly toMin: number };

/** In order, none empty; no spans at all: nobody to send that day. */
export function workSpans(hours: readonly WorkingHours[], absences: readonly Absence[], on: string): readonly Span[] {
  const today = hoursOn(hours, on);
  if (today === undefined) return [];
  const blocked: Span[] = absencesOn(absences, on).map(({ fromMin, toMin }) => ({
    fromMin: fromMin ?? 0,
    toMin: toMin ?? 1440,
  }));
  if (today.breakFromMin !== null && today.breakToMin !== null)
    blocked.push({ fromMin: today.breakFromMin, toMin: today.breakToMin });
  return blocked.reduce<readonly Span[]>(
    (spans, gap) => spans.flatMap((span) => without(span, gap)),
    [{ fromMin: today.fromMin, toMin: today.toMin }],
  );
}

export function hoursOn(hours: readonly WorkingHours[], on: string): WorkingHours | undefined {
  const weekday = Temporal.PlainDate.from(on).dayOfWeek;
  return hours.find((one) => one.weekday === weekday);
}

export function absencesOn(absences: readonly Absence[], on: string): readonly Absence[] {
  return absences.filter((one) => one.fromOn <= on && on <= one.toOn);
}

function without(span: Span, gap: Span): readonly Span[] {
  if (gap.toMin <= span.fromMin || gap.fromMin >= span.toMin) return [span];
  return [
    { fromMin: span.fromMin, toMin: gap.fromMin },
    { fromMin: gap.toMin, toMin: span.toMin },
  ].filter((rest) => rest.fromMin < rest.toMin);
}
