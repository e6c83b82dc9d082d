/** An item by its own record: each kind has its rule, and an answer that has grown too old is none. */
import { stoppingNotices } from '../../recalls/openNotices.ts';
import { assertNever } from '../../result.ts';
import type { StepItem } from '../modelSheet.ts';
import { chooseProgress, confirmProgress, noteProgress } from './answerProgress.ts';
import { photoProgress, signOffProgress, witnessProgress } from './evidenceProgress.ts';
import { holdProgress } from './holdProgress.ts';
import { blockedBecause, type ItemContext, type OwnProgress } from './itemContext.ts';
import { hasLapsed, lapseOf } from './lapse.ts';
import { listProgress } from './listProgress.ts';
import { readProgress, seriesProgress } from './readingProgress.ts';
import { tuningProgress } from './tuningProgress.ts';

export function ownProgress(item: StepItem, context: ItemContext): OwnProgress {
  const own = againstNotices(item, ofKind(item, context), context);
  const { reopenedAt, sheet } = context.input;
  const lapse = lapseOf(item, sheet);
  if (lapse === null || own.lastAt === null || reopenedAt === undefined || reopenedAt === null) return own;
  if (!hasLapsed(lapse, own.lastAt, reopenedAt)) return own;
  return { state: 'open', because: [{ code: 'lapsed', ...lapse, lastAt: own.lastAt }], lastAt: own.lastAt };
}

/** What an item meets that asks whether a recall or stop-use notice is out for the appliance. */
const ASKS_FOR_NOTICES = '2.2/recalls';

/** "None" and "cleared on record" are no answers while a notice in the files stands open: it is settled first. */
function againstNotices(item: StepItem, own: OwnProgress, { input }: ItemContext): OwnProgress {
  const [notice] = stoppingNotices(input.record.openNotices);
  if (notice === undefined || own.state !== 'answered' || own.lastAt === null) return own;
  return item.meets.includes(ASKS_FOR_NOTICES) ? blockedBecause(own.lastAt, { code: 'open-notice', notice }) : own;
}

function ofKind(item: StepItem, context: ItemContext): OwnProgress {
  switch (item.kind) {
    case 'confirm':
      return confirmProgress(item, context);
    case 'choose':
      return chooseProgress(item, context);
    case 'note':
      return noteProgress(item, context);
    case 'read':
      return readProgress(item, context);
    case 'series':
      return seriesProgress(item, context);
    case 'hold':
      return holdProgress(item, context);
    case 'tuning':
      return tuningProgress(item, context);
    case 'parts':
    case 'lockouts':
      return listProgress(item, context);
    case 'photo':
      return photoProgress(item, context);
    case 'witness':
      return witnessProgress(item, context);
    case 'sign-off':
      return signOffProgress(item, context);
    default:
      return assertNever(item);
  }
}
