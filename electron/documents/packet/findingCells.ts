/** A finding's parts as cells of a table. */
import type { Cell } from '../page/blocks.ts';
import type { OpenFinding, PacketView } from './packetView.ts';
import { pointText, proofText, VERDICT_WORDS } from './packetWords.ts';
import { limitText, quantityLabel, valueText, withUnit } from './quantityText.ts';

/** `CO as measured, high fire: 82 ppm`. */
export function findingSubject(finding: OpenFinding, view: PacketView): string {
  const reading = view.record.run.readings.find((one) => one.readingId === finding.readingId);
  const point = pointText(reading?.point ?? finding.basis.limit?.point ?? null, view.record.sheet.firingPoints);
  const name = quantityLabel(finding.subject);
  const where = point === null ? name : `${name}, ${point.toLowerCase()}`;
  const isOfReading = reading !== undefined && reading.quantity === finding.subject && reading.valueOwn !== null;
  if (isOfReading && reading.valueOwn !== null) {
    return `${where}: ${withUnit(valueText(reading.quantity, reading.valueOwn, view.record.unitSystem))}`;
  }
  return where;
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
  return { text: both, small: sourceText(finding) };
}

export function sourceText(finding: OpenFinding): string | null {
  const { source, from, sheet } = finding.basis;
  if (source === null) return null;
  const origin = {
    sheet: sheet ? `sheet ${sheet.sheetId} ${sheet.revision}` : 'sheet',
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
