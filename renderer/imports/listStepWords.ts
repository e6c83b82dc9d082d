/** How far a list is, as a line and as a share of the bar. */
import type { ListWorkKind } from '../../electron/contract/imports.ts';
import type { OutputOf } from '../../electron/contract/index.ts';

type Step = Extract<OutputOf<'imports.follow'>, { isDone: false }>['step'];

export function listStepWords(kind: ListWorkKind, step: Step): string {
  if (step === null) return 'Beginning …';
  const { doing, done, of } = step;
  switch (doing) {
    case 'looking':
      return 'Looking whether later work hangs on it …';
    case 'rows':
      return `${done} of ${of} ${kind === 'take-in' ? 'entries written' : 'records taken out'}.`;
    case 'finds':
      return `Bringing the search up to date: ${done} of ${of}.`;
    case 'dues':
      return `Working out what falls due: ${done} of ${of} appliances.`;
  }
}

/** Where each part begins and ends on the bar, in per cent, as measured with 20 000 rows. */
const PARTS = { looking: [0, 10], rows: [10, 80], finds: [80, 92], dues: [92, 100] } as const;

export function listStepPct(step: Step): number {
  if (step === null) return 0;
  const [from, to] = PARTS[step.doing];
  return from + ((to - from) * step.done) / Math.max(1, step.of);
}
