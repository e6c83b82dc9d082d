/** A failed check that somebody later found good: both stand, and it stays open until it is closed with a reason. */
import type { Block, StepItem } from '../../procedure/modelSheet.ts';
import type { RecordedAnswer } from '../../procedure/runRecord.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';

export function answersDisagree(context: RunContext): readonly Finding[] {
  return context.steps
    .flatMap((step) => step.items)
    .flatMap((item) => {
      const answers = context.record.answers
        .filter((one) => one.itemKey === item.key && one.value !== null)
        .sort((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : 0));
      const failed = answers.find((answer) => hasFailed(answer, item));
      const last = answers.at(-1);
      if (failed === undefined || last === undefined || hasFailed(last, item)) return [];
      if ((last.reason?.trim() ?? '') !== '') return [];
      return [disagreement(item, failed, last)];
    });
}

function hasFailed({ value }: RecordedAnswer, item: StepItem): boolean {
  if (item.kind === 'confirm') return value === 'no';
  if (item.kind !== 'choose') return false;
  return item.options.some((option) => option.value === value && option.outcome !== 'fine');
}

function disagreement(item: StepItem, failed: RecordedAnswer, last: RecordedAnswer): Finding {
  const blocks: readonly Block[] = item.blocks.length > 0 ? item.blocks : ['leaving'];
  return buildFinding({
    subject: item.key,
    verdict: 'outside',
    blocks,
    basis: {
      inputs: {
        failed: failed.value ?? '',
        failedAt: failed.at,
        failedBy: failed.byId,
        passed: last.value ?? '',
        passedAt: last.at,
        passedBy: last.byId,
      },
    },
    missing: ['which of the two answers holds, with the reason, from a licensed person'],
  });
}
