/** Timed waits: too short, or with a clock that moved while they ran. */
import type { Block } from '../../procedure/modelSheet.ts';
import type { RecordedHold } from '../../procedure/runRecord.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { instantMs } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

export function judgeHolds(context: RunContext): readonly Finding[] {
  return context.holds.flatMap((hold) => {
    const item = context.steps.flatMap((step) => step.items).find(({ key }) => key === hold.itemKey);
    return judge(hold, item?.blocks ?? [], item?.kind === 'hold' ? item.seconds : 0);
  });
}

function judge(hold: RecordedHold, blocks: readonly Block[], sheetS: number): readonly Finding[] {
  const startedMs = instantMs(hold.startedAt);
  const endedMs = instantMs(hold.endedAt ?? '');
  if (startedMs === null || endedMs === null) return [];
  const ranS = (endedMs - startedMs) / 1000;
  const requiredS = Math.max(hold.requiredS, sheetS);
  const basis = {
    from: 'sheet' as const,
    formula: 'end − start',
    inputs: { requiredS, startedAt: hold.startedAt },
    result: { value: ranS, unit: 's', plusMinus: null },
  };
  if (hold.clockJumped) {
    return [
      buildFinding({
        subject: hold.itemKey,
        verdict: 'cannot-judge',
        proof: { proven: false, because: ['clock-jumped'] },
        blocks,
        basis,
        missing: ['the wait once more: the clock moved while it ran'],
      }),
    ];
  }
  const isLongEnough = ranS >= requiredS;
  const verdict = isLongEnough ? 'within' : 'outside';
  // Nobody can prove it any more: a wait that was long enough on paper is said to be from paper and blocks nothing.
  if (hold.transcribed != null) {
    return [
      buildFinding({
        subject: hold.itemKey,
        verdict,
        proof: { proven: false, because: ['from-paper'] },
        blocks: isLongEnough ? [] : blocks,
        basis,
      }),
    ];
  }
  return [buildFinding({ subject: hold.itemKey, verdict, blocks, basis })];
}
