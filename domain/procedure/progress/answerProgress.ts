/** Items answered with a word: confirm, choose and note. A "no" and a bad option are answers, and keep blocking. */
import { CONVERTED, isOtherFuelThanPlate, plateFuelOf } from '../conversion.ts';
import type { ItemOf } from '../modelSheet.ts';
import type { ItemReason } from '../progressTypes.ts';
import type { RecordedAnswer } from '../runRecord.ts';
import { isFuelKey } from './isFuelKey.ts';
import {
  answeredAt,
  blockedBecause,
  type ItemContext,
  notPossible,
  type OwnProgress,
  openBecause,
} from './itemContext.ts';

export function confirmProgress(item: ItemOf<'confirm'>, context: ItemContext): OwnProgress {
  const answer = givenAnswer(item.key, context);
  if (answer === null) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  if (answer.value === 'yes') return answeredAt(answer.at);
  if (answer.value === 'no') {
    return item.blocks.length === 0 ? answeredAt(answer.at) : blockedBecause(answer.at, { code: 'answered-no' });
  }
  if (answer.value === 'not-applicable' && item.notApplicable) return answeredAt(answer.at);
  return openBecause({ code: 'not-an-option', value: answer.value });
}

export function chooseProgress(item: ItemOf<'choose'>, context: ItemContext): OwnProgress {
  const answer = givenAnswer(item.key, context);
  if (answer === null) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  const option = item.options.find((one) => one.value === answer.value);
  if (option === undefined) return openBecause({ code: 'not-an-option', value: answer.value });
  if (option.outcome === 'stop') {
    return { ...blockedBecause(answer.at, { code: 'option-stop', option: option.value }), isStop: true };
  }
  if (option.staysOpen === true) return blockedBecause(answer.at, { code: 'fault-open', option: option.value });
  if (option.outcome === 'finding' && (answer.reason?.trim() ?? '') === '') {
    return blockedBecause(answer.at, { code: 'option-needs-explanation', option: option.value });
  }
  const denied = deniedConversion(item, option.value, context);
  if (denied !== null) return blockedBecause(answer.at, denied);
  const fuelProblem = item.identifies === undefined ? null : fuelReason(item.identifies, option.value, context);
  return fuelProblem === null ? answeredAt(answer.at) : blockedBecause(answer.at, fuelProblem);
}

export function noteProgress(item: ItemOf<'note'>, context: ItemContext): OwnProgress {
  const answer = givenAnswer(item.key, context);
  if (answer === null) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  if (item.identifies === 'serial') {
    const onJob = context.byItem.record.appliance.serial;
    if (plainSerial(onJob) !== plainSerial(answer.value)) {
      return blockedBecause(answer.at, { code: 'differs-from-job', field: 'serial', onJob, seen: answer.value });
    }
  }
  return answeredAt(answer.at);
}

type Given = RecordedAnswer & { readonly value: string };

function givenAnswer(itemKey: string, context: ItemContext): Given | null {
  const answer = context.byItem.answer(itemKey);
  if (answer === undefined || answer.value === null || answer.value.trim() === '') return null;
  return { ...answer, value: answer.value };
}

/** A plate or tag for another fuel than the one burnt here needs a conversion on record; a tag may be missing, a plate may not. */
function fuelReason(field: 'plate-fuel' | 'tag-fuel', seen: string, context: ItemContext): ItemReason | null {
  if (!isFuelKey(seen)) return null;
  const { appliance, fuel } = context.byItem.record;
  const onJob = field === 'plate-fuel' ? appliance.plateFuel : appliance.tagFuel;
  if (onJob !== null && onJob !== seen) return { code: 'differs-from-job', field, onJob, seen };
  if (seen !== fuel && !appliance.hasConversionRecord) return { code: 'fuel-mismatch', appliance: seen, site: fuel };
  return null;
}

/** "Not converted" beside a plate for another fuel than the site burns: one of the two is wrong, and nothing is lit until it is known which. */
function deniedConversion(item: ItemOf<'choose'>, value: string, context: ItemContext): ItemReason | null {
  if (value === CONVERTED || !item.options.some((option) => option.value === CONVERTED)) return null;
  const { input, byItem } = context;
  const steps = input.sheet[input.steps] ?? [];
  const plate = plateFuelOf(steps, byItem);
  if (plate === null || !isOtherFuelThanPlate(steps, byItem)) return null;
  return { code: 'plate-for-other-fuel', plate, site: byItem.record.fuel };
}

/** Spaces, hyphens and case are how people write a serial; look-alike letters are left for the judgement to ask about. */
function plainSerial(serial: string): string {
  return serial.replaceAll(/[\s-]/g, '').toUpperCase();
}
