/** What was amended after sealing, before anything it is about: what, was, is now, why, who and when. */

import { momentText } from '../../documentDates.ts';
import type { Block } from '../../page/blocks.ts';
import type { PacketView } from '../packetView.ts';

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
      rows: amendments.map(({ what, was, isNow, because, byName, at }) => [
        { text: what },
        { text: was ?? 'not recorded' },
        { text: isNow },
        { text: because, small: `${byName}, ${momentText(at, view.timeZone)}` },
      ]),
    },
  ];
}
