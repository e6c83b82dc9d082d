/** A visit's day, times and crew as a form holds them, the same for booking and for moving. */
import type { InputOf } from '../../electron/contract/index.ts';
import type { FormReader } from '../form/FormReader.ts';
import { durationWords, readDuration, readTime } from '../form/readTime.ts';
import { dayWords } from '../kit/dayWords.ts';
import { CREW_ROLE_WORDS, keyOf } from '../kit/tradeWords.ts';

export type VisitForm = {
  readonly plannedOn: string;
  readonly plannedFrom: string;
  readonly plannedTo: string;
  readonly duration: string;
  /** Person to role; absent: not on the crew. */
  readonly crew: Readonly<Record<string, string>>;
  /** `yes` or `no`; empty: as readiness stands, until somebody chooses. */
  readonly isPencilled: string;
};

type VisitTimes = Pick<
  InputOf<'visits.update'>,
  'plannedOn' | 'plannedFrom' | 'plannedTo' | 'durationMin' | 'crew' | 'isPencilled'
>;

/** `suggestedMin`: as board and planner reckon it, by kind, size and what somebody wrote down. */
export function emptyVisit(suggestedMin: number): VisitForm {
  return {
    plannedOn: '',
    plannedFrom: '',
    plannedTo: '',
    duration: durationWords(suggestedMin),
    crew: {},
    isPencilled: '',
  };
}

/** What was chosen by hand stands; otherwise firm as soon as nothing that must be given is open. */
export function howFirm({ isPencilled }: Pick<VisitForm, 'isPencilled'>, isReady: boolean): 'yes' | 'no' {
  if (isPencilled === '') return isReady ? 'no' : 'yes';
  return isPencilled === 'yes' ? 'yes' : 'no';
}

export function visitToForm(visit: {
  readonly plannedOn: string;
  readonly plannedFrom: string | null;
  readonly plannedTo: string | null;
  readonly durationMin: number;
  readonly crew: readonly { readonly staffId: string; readonly role: string }[];
  readonly state: string;
}): VisitForm {
  return {
    plannedOn: dayWords(visit.plannedOn),
    plannedFrom: visit.plannedFrom ?? '',
    plannedTo: visit.plannedTo ?? '',
    duration: durationWords(visit.durationMin),
    crew: Object.fromEntries(visit.crew.map(({ staffId, role }) => [staffId, role])),
    isPencilled: visit.state === 'pencilled' ? 'yes' : 'no',
  };
}

export function visitFromForm(form: VisitForm, reader: FormReader, isReady: boolean): VisitTimes {
  const durationMin = readDuration(form.duration);
  if (durationMin === null) reader.fail('duration', 'Not a length of time. Example: 2 h 30 min.');
  const crew = Object.entries(form.crew).flatMap(([staffId, role]) => {
    const known = keyOf(CREW_ROLE_WORDS, role);
    return known === null ? [] : [{ staffId, role: known }];
  });
  if (crew.length === 0) reader.fail('crew', 'Somebody has to go.');
  return {
    plannedOn: reader.neededDay('plannedOn', form.plannedOn),
    plannedFrom: time('plannedFrom', form.plannedFrom, reader),
    plannedTo: time('plannedTo', form.plannedTo, reader),
    durationMin: durationMin ?? 0,
    crew,
    isPencilled: howFirm(form, isReady) === 'yes',
  };
}

function time(field: string, text: string, reader: FormReader): string | null {
  const read = readTime(text);
  if (read === undefined) reader.fail(field, 'Not a time of day. Example: 8:30.');
  return read ?? null;
}
