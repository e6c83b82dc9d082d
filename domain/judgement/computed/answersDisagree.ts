/** A failed safety test that somebody later found good: both stand, and it stays open until it is closed with a reason. */
import { type FailedTest, failedTest } from '../../procedure/failedTest.ts';
import type { Block, StepItem } from '../../procedure/modelSheet.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';

export function answersDisagree(context: RunContext): readonly Finding[] {
  return context.steps
    .flatMap((step) => step.items)
    .flatMap((item) => {
      const test = failedTest(item, context.answersOf(item.key));
      return test === null || test.isClosed ? [] : [disagreement(item, test)];
    });
}

function disagreement(item: StepItem, { failed, last }: FailedTest): Finding {
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
        passed: last.value ?? 'not possible',
        passedAt: last.at,
        passedBy: last.byId,
      },
    },
    missing: ['which of the two answers holds, with the reason, from a licensed person'],
  });
}
