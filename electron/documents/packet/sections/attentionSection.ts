/** What a reader must not overlook: stops first, then everything outside, not told apart, not judged or not proven. */
import type { Block, Cell } from '../../page/blocks.ts';
import { findingSubject, limitCell, proofCell, verdictCell } from '../findingCells.ts';
import { HARDEST_FIRST, lastOfEach, needsAttention, type OpenFinding, type PacketView } from '../packetView.ts';

export function attentionSection(view: PacketView): readonly Block[] {
  const { findings } = view.record;
  const stops = findings.filter((finding) => finding.verdict === 'stop');
  const open = lastOfEach(findings.filter((finding) => finding.verdict !== 'stop' && needsAttention(finding)));
  if (stops.length + open.length === 0) {
    const text =
      findings.length === 0
        ? 'No reading has been judged.'
        : 'Every judged reading is within its limit on the sheet and proven.';
    return [
      { kind: 'heading', level: 2, text: 'Findings to look at' },
      { kind: 'paragraph', text },
    ];
  }
  return [
    { kind: 'heading', level: 2, text: 'Findings to look at' },
    ...stops.map((finding) => stopNotice(finding, view)),
    ...(open.length === 0 ? [] : [attentionTable(open, view)]),
  ];
}

function stopNotice(finding: OpenFinding, view: PacketView): Block {
  const limit = limitCell(finding, view);
  return {
    kind: 'notice',
    tone: 'stop',
    title: `Stop: ${findingSubject(finding, view)}`,
    lines: [
      `${limit.text}${limit.small ? ` (${limit.small})` : ''}`,
      ...(finding.leaveFirst ? ['Everybody out first.'] : []),
      ...finding.makeSafe.map((step, index) => `${index + 1}. ${step}`),
    ],
  };
}

function attentionTable(findings: readonly OpenFinding[], view: PacketView): Block {
  const ordered = findings.toSorted((a, b) => HARDEST_FIRST.indexOf(a.verdict) - HARDEST_FIRST.indexOf(b.verdict));
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Finding', share: 2 },
      { header: 'Verdict', share: 1.5 },
      { header: 'Limit', share: 1.7 },
      { header: 'Proof', share: 1.6 },
      { header: 'Stands in the way of', share: 1.1 },
    ],
    rows: ordered.map((finding): Cell[] => [
      { text: findingSubject(finding, view) },
      verdictCell(finding),
      limitCell(finding, view),
      proofCell(finding),
      { text: finding.blocks.length === 0 ? 'nothing' : finding.blocks.join(', ') },
    ]),
  };
}
