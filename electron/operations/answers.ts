/** What an answer must be before it is kept: one the item takes, by somebody who may give it, with a reason where one is owed. */
import { isInstrument, listStaff } from '../../db/people.ts';
import { listAnswers } from '../../db/runs.ts';
import type { runAnswers } from '../../db/schema/index.ts';
import { failedTest } from '../../domain/procedure/failedTest.ts';
import type { StepItem } from '../../domain/procedure/modelSheet.ts';
import { ADVICE_ANSWER } from '../../domain/procedure/progress/findingsByItem.ts';
import { NONE_ANSWER } from '../../domain/procedure/progress/listProgress.ts';
import { fail, type HandlerContext, notFound } from './handler.ts';
import { type ItemRef, type OpenItem, requireLicensedIn, requireOpenItem, requireWhoDidIt } from './runGuards.ts';

export type GivenAnswer = ItemRef & {
  readonly value: string | null;
  readonly reason: string | null;
  readonly instrumentId: string | null;
};

/** `byId` gave it, whoever types it. */
export function requireAnswerable(
  context: HandlerContext,
  input: GivenAnswer,
  byId: string,
): Omit<typeof runAnswers.$inferInsert, 'id' | 'at'> {
  const { loaded, step, item } = requireOpenItem(
    context,
    input,
    'confirm',
    'choose',
    'note',
    'witness',
    'read',
    'series',
    'photo',
    'hold',
    'tuning',
    'sign-off',
    'parts',
    'lockouts',
  );
  requireWhoDidIt(context.db, loaded, step, input.visitId, byId);
  if (input.instrumentId !== null && !isInstrument(context.db, input.instrumentId))
    return notFound('instruments', input.instrumentId);
  const value = input.value?.trim() ?? null;
  if (value !== null && !mayAnswer(item, value)) return fail('not-an-option', { value });
  if (value === null && (input.reason === null || !item.mayBeNotPossible)) return fail('must-be-possible', {});
  if (value !== null && item.kind === 'witness')
    requireWitness(context, { ...input, loaded, step, item, name: value, byId });
  const { visitId, runId, stepKey, itemKey, reason, instrumentId } = input;
  const answer = { visitId, runId, stepKey, itemKey, value, reason, instrumentId, byId };
  const earlier = listAnswers(context.db, runId, itemKey);
  const isClosedBy = (answers: Parameters<typeof failedTest>[1]) => failedTest(item, answers)?.isClosed === true;
  if (!isClosedBy(earlier) && isClosedBy([...earlier, { ...answer, at: context.now }]))
    requireLicensedIn(step, context.db, loaded, visitId, byId);
  return answer;
}

/**
 * A proof by another person: not by whoever did the work, and where it must be a licensed one, not by somebody of the firm who
 * holds no licence for it. A name the firm does not know may be an inspector's, and is kept as it is given.
 */
function requireWitness(
  context: HandlerContext,
  {
    loaded,
    visitId,
    step,
    item,
    name,
    byId,
  }: OpenItem<'witness'> & { readonly visitId: string; readonly name: string; readonly byId: string },
): void {
  if (item.by === 'occupant') return;
  const named = listStaff(context.db).find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (named?.id === byId) fail('witness-is-same', { name: named.name });
  if (named !== undefined && item.by === 'licensed') requireLicensedIn(step, context.db, loaded, visitId, named.id);
}

/** Values an item takes; a reading may only be answered with the maker's advice to leave it outside. */
function mayAnswer(item: StepItem, value: string): boolean {
  switch (item.kind) {
    case 'confirm':
      return value === 'yes' || value === 'no' || (value === 'not-applicable' && item.notApplicable);
    case 'choose':
      return item.options.some((option) => option.value === value);
    case 'note':
    case 'witness':
      return value !== '';
    case 'parts':
    case 'lockouts':
      return value === NONE_ANSWER;
    case 'read':
    case 'series':
      return value === ADVICE_ANSWER;
    default:
      return false;
  }
}
