/** A failed safety test that somebody later found good: both stand, and it stays open until it is closed with a reason. */
import type { Block, StepItem } from '../../procedure/modelSheet.ts';
import type { RecordedAnswer } from '../../procedure/runRecord.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';

export function answersDisagree(context: RunContext): readonly Finding[] {
  return context.steps
    .flatMap((step) => step.items)
    .flatMap((item) => {
      const answers = context.answersOf(item.key).filter(({ value }) => value !== null);
      const failed = answers.find((answer) => hasFailed(answer, item));
      const last = answers.at(-1);
      if (failed === undefined || last === undefined || hasFailed(last, item)) return [];
      if ((last.reason?.trim() ?? '') !== '') return [];
      return [disagreement(item, failed, last)];
    });
}

/** Only a test that says stop: a "not yet" that was put right is how work goes. */
function hasFailed({ value }: RecordedAnswer, item: StepItem): boolean {
  return item.kind === 'choose' && item.options.some((one) => one.value === value && one.outcome === 'stop');
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
