/** A finding's parts as cells of a table. */
import { lowerBoundMark } from '../../../domain/judgement/resultUnit.ts';
import type { Cell } from '../page/blocks.ts';
import type { OpenFinding, PacketView } from './packetView.ts';
import { proofText, VERDICT_WORDS } from './packetWords.ts';
import { limitText, valueText, withUnit } from './quantityText.ts';
import { resultOf, resultText } from './resultText.ts';
import { subjectWords } from './subjectWords.ts';

/** `CO as measured, high fire: 82 ppm`. */
export function findingSubject(finding: OpenFinding, view: PacketView): string {
  const reading = view.record.run.readings.find((one) => one.readingId === finding.readingId);
  const { formula, limit } = finding.basis;
  const about = subjectWords(
    { subject: finding.subject, formula, point: reading?.point ?? limit?.point ?? null },
    view,
  );
  const result = resultOf(finding);
  if (result) return `${about}: ${lowerBoundMark(finding.basis.inputs)}${resultText(result, view.record.unitSystem)}`;
  if (!reading || reading.valueOwn === null) return about;
  const mark = reading.comparator === '=' ? '' : `${reading.comparator} `;
  return `${about}: ${mark}${withUnit(valueText(reading.quantity, reading.valueOwn, view.record.unitSystem))}`;
}

export function verdictCell(finding: OpenFinding): Cell {
  return {
    text: VERDICT_WORDS[finding.verdict],
    verdict: finding.verdict,
    tone: finding.verdict === 'stop' ? 'stop' : 'plain',
  };
}

export function limitCell(finding: OpenFinding, view: PacketView): Cell {
  const { limit, source } = finding.basis;
  if (limit === null) {
    return {
      text: finding.missing.length > 0 ? `missing: ${finding.missing.join(', ')}` : '–',
      small: source?.source ?? null,
    };
  }
  const [first, second] = view.unitSystems.map((system) => limitText(limit, system));
  const both = second === undefined || second === first ? (first ?? '') : `${first} (${second})`;
  return { text: both, small: sourceText(finding, view) };
}

/** The packet names its sheet once; only another one is named beside a limit. */
export function sourceText(finding: OpenFinding, view: PacketView): string | null {
  const { source, from, sheet } = finding.basis;
  const isOwnSheet = sheet?.sheetId === view.record.sheet.sheetId && sheet.revision === view.record.sheet.revision;
  if (source === null) return null;
  const origin = {
    sheet: sheet && !isOwnSheet ? `sheet ${sheet.sheetId} ${sheet.revision}` : 'sheet',
    ceiling: 'cited safety ceiling',
    physics: 'physics',
    practice: 'common practice',
    none: '',
  }[from];
  const kind = source.kind === 'common-practice' && from !== 'practice' ? ', common practice' : '';
  return `${origin}${kind}: ${source.source}`;
}

export function proofCell(finding: OpenFinding): Cell {
  return { text: proofText(finding.proof), tone: finding.proof.proven ? 'muted' : 'plain' };
}
