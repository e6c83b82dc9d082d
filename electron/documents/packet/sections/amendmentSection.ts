/** What was amended after sealing, before anything it is about: what, was, is now, why, who and when. */
import type { Verdict } from '../../../../domain/judgement/finding.ts';
import { verdictRank } from '../../../../domain/judgement/verdictRank.ts';
import { momentText } from '../../documentDates.ts';
import type { Block, Cell } from '../../page/blocks.ts';
import type { PacketView } from '../packetView.ts';
import { VERDICT_WORDS } from '../packetWords.ts';
import { subjectWords } from '../subjectWords.ts';

export function amendmentSection(view: PacketView): readonly Block[] {
  const { record } = view;
  const amendments = record.schema === 'lightoff.record/1' ? (record.seal.amendments ?? []) : [];
  if (amendments.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Amended after sealing' },
    {
      kind: 'paragraph',
      text: 'The pages below stand as they were sealed; these corrections were written beside them and chained to them.',
    },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'What', share: 1.4 },
        { header: 'Was', share: 1.2 },
        { header: 'Is now', share: 1.4 },
        { header: 'Because', share: 1.6 },
      ],
      rows: amendments.map(({ what, was, isNow, because, judged, byName, at }) => [
        { text: what },
        { text: was ?? 'not recorded' },
        { text: isNow, ...judgedCell(judged ?? [], view) },
        { text: because, small: `${byName}, ${momentText(at, view.timeZone)}` },
      ]),
    },
  ];
}

/** What the new number puts outside its limit or at a stop, heaviest first: it is read before anything below. */
function judgedCell(judged: readonly Judged[], view: PacketView): Pick<Cell, 'small' | 'tone'> {
  if (judged.length === 0) return {};
  const words = judged
    .toSorted((one, other) => verdictRank(other.verdict) - verdictRank(one.verdict))
    .map(
      ({ subject, verdict }) =>
        `${VERDICT_WORDS[verdict]}: ${subjectWords({ subject, formula: null, point: null }, view)}`,
    );
  return { small: words.join('; '), tone: 'strong' };
}

type Judged = { readonly subject: string; readonly verdict: Verdict };
