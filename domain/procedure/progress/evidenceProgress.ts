/** Items proved by something or somebody else than a typed word: photo, witness and sign-off. */
import type { ItemOf } from '../modelSheet.ts';
import { newest } from './instants.ts';
import {
  answeredAt,
  blockedBecause,
  type ItemContext,
  notPossible,
  type OwnProgress,
  openBecause,
} from './itemContext.ts';

export function photoProgress(item: ItemOf<'photo'>, context: ItemContext): OwnProgress {
  const last = newest(context.byItem.photos(item.key), (photo) => photo.takenAt);
  if (last === undefined) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  return answeredAt(last.takenAt);
}

export function witnessProgress(item: ItemOf<'witness'>, context: ItemContext): OwnProgress {
  const answer = context.byItem.answer(item.key);
  const name = answer?.value?.trim() ?? '';
  if (answer === undefined || name === '') return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  const person = personNamed(name, context);
  if (item.by === 'licensed' && context.input.people !== undefined && person?.isLicensed !== true) {
    return blockedBecause(answer.at, { code: 'not-licensed', name });
  }
  if (person !== undefined && didWorkOf(context).has(person.staffId)) {
    return blockedBecause(answer.at, { code: 'witness-did-the-work', name });
  }
  return answeredAt(answer.at);
}

export function signOffProgress(item: ItemOf<'sign-off'>, context: ItemContext): OwnProgress {
  const signOff = context.byItem.signOff(item.key);
  if (signOff === undefined || signOff.by !== item.by) {
    return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  }
  const { people } = context.input;
  if (item.by === 'licensed') {
    const isLicensed = people === undefined || people.some((one) => one.staffId === signOff.staffId && one.isLicensed);
    if (signOff.staffId === null || !isLicensed) {
      return blockedBecause(signOff.at, { code: 'not-licensed', name: signOff.name });
    }
  }
  return answeredAt(signOff.at);
}

function personNamed(name: string, context: ItemContext) {
  const wanted = name.toLocaleLowerCase('en');
  return context.input.people?.find((person) => person.name.trim().toLocaleLowerCase('en') === wanted);
}

/** Those who measured or answered the readings and questions of this step. */
function didWorkOf(context: ItemContext): ReadonlySet<string> {
  const { record } = context.byItem;
  const ofStep = new Set(context.step.items.filter((item) => item.kind !== 'witness').map((item) => item.key));
  return new Set([
    ...record.readings.filter((one) => ofStep.has(one.itemKey)).map((one) => one.measuredById),
    ...record.answers.filter((one) => ofStep.has(one.itemKey)).map((one) => one.byId),
  ]);
}
