/** Why something stands all the same: the maker's advice on a value outside the sheet, or the reason a factory setting was kept. */
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { ADVICE_ANSWER } from '../../../domain/procedure/progress/findingsByItem.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { limitsFor } from '../field/limitsFor.ts';
import { newestAnswer } from '../stage/answerText.ts';
import { findingsOfItem } from '../stage/findingsOfItem.ts';
import { useRun } from '../state/RunContext.ts';
import { useAnswerSave } from '../state/useItemWrites.ts';
import { ReasonBox } from './ReasonBox.tsx';

export function StandsBecause({ item, address }: { readonly item: ItemOf<'read'>; readonly address: ItemAddress }) {
  const { view, analysis } = useRun();
  const save = useAnswerSave(address);
  const findings = findingsOfItem(item, view.record, analysis.findings);
  const given = newestAnswer(view.record, item.key);
  const mayStand = limitsFor(view.sheet, view.record.fuel, item.quantity, item.point).some(
    (limit) => limit.mayStandWithAdvice === true,
  );
  const isOutside = findings.some((finding) => finding.verdict === 'outside');
  const isFactory = findings.some((finding) => finding.subject.startsWith('default:'));
  const label =
    isOutside && mayStand
      ? 'Outside the sheet, left by the maker’s advice: who gave it, when, what it says'
      : isFactory || (given?.value === ADVICE_ANSWER && given.reason !== null)
        ? 'Why the factory setting is kept'
        : null;
  if (label === null) return null;
  return (
    <ReasonBox
      address={address}
      box="stands"
      label={label}
      stored={given?.value === ADVICE_ANSWER ? (given.reason ?? '') : ''}
      save={(text) => save(ADVICE_ANSWER, text.trim())}
    />
  );
}
