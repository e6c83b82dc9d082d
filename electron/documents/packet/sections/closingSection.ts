/** What is not evidenced and why the packet was made all the same; then how anybody can check this document. */
import { NO_GLYPH } from '../../drawableText.ts';
import type { Block, Cell } from '../../page/blocks.ts';
import { findingSubject, sourceText } from '../findingCells.ts';
import { fingerprintGroups } from '../fingerprint.ts';
import { inputsText } from '../inputsText.ts';
import { gapText } from '../packetGapWords.ts';
import { needsAttention, type PacketView } from '../packetView.ts';
import { resultOf, resultText } from '../resultText.ts';
import { formulaWords } from '../subjectWords.ts';

export function closingSection(view: PacketView): readonly Block[] {
  return [...basisBlocks(view), ...gapBlocks(view), ...checkBlocks(view)];
}

/** Formula and inputs of each finding to look at that was not judged on a plain reading. */
function basisBlocks(view: PacketView): readonly Block[] {
  const worked = view.record.findings.filter((finding) => needsAttention(finding) && finding.basis.formula !== null);
  if (worked.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'How findings came about' },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Finding', share: 1.3 },
        { header: 'Formula', share: 1.7 },
        { header: 'Inputs and result', share: 2 },
      ],
      rows: worked.map((finding): Cell[] => {
        const result = resultOf(finding);
        const gave = result ? `gives ${resultText(result, 'metric')}` : null;
        return [
          { text: findingSubject(finding, view) },
          { text: formulaWords(finding.basis.formula ?? '', view), small: sourceText(finding, view) },
          { text: inputsText(finding.basis.inputs, view.record.sheet.firingPoints), small: gave },
        ];
      }),
    },
  ];
}

function gapBlocks(view: PacketView): readonly Block[] {
  const { gaps, gapReason } = view.input;
  if (gaps.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Not evidenced in this packet' },
    { kind: 'list', items: gaps.map(gapText) },
    ...(gapReason === null
      ? []
      : [{ kind: 'notice', title: 'Made all the same, because', lines: [gapReason], tone: 'plain' } as const]),
  ];
}

/** A whole visit that is gone shows in no chain of its own. */
function dayHeadText({ day, sha256 }: NonNullable<PacketView['input']['dayHead']>): string {
  return `All that the firm sealed up to ${day} (UTC) has the fingerprint ${fingerprintGroups(sha256).join(' ')}: a record of those days that was taken away or put in later changes it.`;
}

function checkBlocks(view: PacketView): readonly Block[] {
  const fingerprint = fingerprintGroups(view.sha256).join(' ');
  const { record } = view;
  const chain =
    record.schema === 'lightoff.record/1'
      ? `Entry ${record.seal.sequence} of this visit’s chain${record.seal.previousSha256 === null ? ', the first' : `; the entry before it has the fingerprint ${fingerprintGroups(record.seal.previousSha256).join(' ')}`}.`
      : 'The record is not sealed and stands in no chain.';
  return [
    { kind: 'heading', level: 2, text: 'How to check this document' },
    { kind: 'paragraph', tone: 'strong', text: fingerprint },
    {
      kind: 'list',
      items: [
        'The file record.json inside this PDF is the record these pages were made from. The SHA-256 of its bytes is the fingerprint above; any program that works out SHA-256 gives the same.',
        'Names, addresses and free words are in disclosures.json beside it; the record holds a salted hash of each, so that a person can be erased without the fingerprint changing.',
        chain,
        ...(view.input.dayHead === undefined ? [] : [dayHeadText(view.input.dayHead)]),
        'A fingerprint shows that something was changed; it does not prevent it. Whoever keeps the store could make a new chain: this paper, or a copy handed out, is what such a chain can be held against.',
        `The box ${NO_GLYPH} stands for a letter the typeface of this document lacks; record.json and disclosures.json have it.`,
      ],
    },
  ];
}
