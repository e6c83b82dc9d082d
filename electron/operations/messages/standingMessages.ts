/** What could be written today about one subject and by one channel, what was not prepared yet first. */
import { assertNever } from '../../../domain/result.ts';
import type { OutputOf, ParsedInputOf } from '../../contract/index.ts';
import type { ReadContext } from '../handler.ts';
import { standingAppointments } from './appointmentSubjects.ts';
import { isPrepared } from './composeMessages.ts';
import type { MessageSubject } from './messageSubject.ts';
import { standingNotices } from './recallSubjects.ts';
import { standingReminders } from './reminderSubjects.ts';

type Asked = ParsedInputOf<'messages.standing'>;

export function standingMessages(context: ReadContext, asked: Asked): OutputOf<'messages.standing'> {
  const standing = subjectsAbout(context, asked).filter(({ mayUse }) => mayUse(asked.channel));
  const [fresh, prepared] = [false, true].map((was) => standing.filter((one) => isPrepared(context, one) === was));
  return {
    keys: [...(fresh ?? []), ...(prepared ?? [])].slice(0, asked.limit).map(({ key }) => key),
    total: standing.length,
    preparedCount: prepared?.length ?? 0,
  };
}

function subjectsAbout(context: ReadContext, { about, channel }: Asked): readonly MessageSubject[] {
  switch (about.kind) {
    case 'reminders':
      return standingReminders(context, channel);
    case 'appointments':
      return standingAppointments(context, about.which);
    case 'recall':
      return standingNotices(context, about.recallId);
    default:
      return assertNever(about);
  }
}
