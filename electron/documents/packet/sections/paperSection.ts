/** Everything in the record that was copied from paper: what, by whom it was written and when, who typed it and when. */
import { COPIED_ANSWER } from '../../../../domain/procedure/progress/listProgress.ts';
import { typedWithUnit } from '../../../../domain/quantity/typedWithUnit.ts';
import { momentText } from '../../documentDates.ts';
import type { Block, Cell } from '../../page/blocks.ts';
import type { PacketView } from '../packetView.ts';
import { readingLabel } from '../packetWords.ts';

export function paperSection(view: PacketView): readonly Block[] {
  const rows = paperRows(view);
  if (rows.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Copied from paper' },
    {
      kind: 'paragraph',
      text: 'Written by hand at the appliance and typed in afterwards. Times are as they were written, to the minute; a wait on paper is not proven by the app.',
    },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'What', share: 2 },
        { header: 'Written', share: 1.2 },
        { header: 'By, at', share: 1.5 },
        { header: 'Typed by, at', share: 1.5 },
      ],
      rows,
    },
  ];
}

type Answer = PacketView['record']['run']['answers'][number];

/** The mark of a list's line names the line in its reason. What is typed freely, and the mark with it, is sealed as words. */
function writtenText({ value, words, reason }: Pick<Answer, 'value' | 'words' | 'reason'>): string {
  const said = words ?? value;
  if (said === COPIED_ANSWER && reason !== null) return reason;
  return said ?? `not possible: ${reason ?? ''}`;
}

function paperRows(view: PacketView): readonly (readonly Cell[])[] {
  const { run } = view.record;
  const at = (instant: string): string => momentText(instant, view.timeZone, view.visitOn);
  const label = (itemKey: string): string => view.itemOf(itemKey)?.label ?? itemKey;
  const row = (what: string, written: string, by: string, typed: string): readonly Cell[] =>
    [what, written, by, typed].map((text) => ({ text }));
  const typedBy = ({ typedById, typedAt }: { readonly typedById: string; readonly typedAt: string }): string =>
    `${view.nameOf(typedById)}, ${momentText(typedAt, view.timeZone)}`;
  return [
    ...run.readings
      .filter((one) => one.origin === 'transcribed')
      .map((one) =>
        row(
          readingLabel(one.quantity, one.point, view.record.sheet.firingPoints),
          typedWithUnit(one.typedText, one.typedUnit),
          `${view.nameOf(one.measuredById)}, ${at(one.measuredAt)}`,
          view.nameOf(one.typedById),
        ),
      ),
    ...run.answers.flatMap((one) =>
      one.transcribed == null
        ? []
        : [
            row(
              label(one.itemKey),
              writtenText(one),
              `${view.nameOf(one.byId)}, ${at(one.at)}`,
              typedBy(one.transcribed),
            ),
          ],
    ),
    ...run.holds.flatMap((one) =>
      one.transcribed == null
        ? []
        : [
            row(
              label(one.itemKey),
              `${at(one.startedAt)} to ${one.endedAt === null ? '?' : at(one.endedAt)}`,
              '',
              typedBy(one.transcribed),
            ),
          ],
    ),
    ...run.tunings.flatMap((one) =>
      one.transcribed == null
        ? []
        : [
            row(
              label(one.itemKey),
              `finished ${one.finishedAt === null ? '?' : at(one.finishedAt)}`,
              '',
              typedBy(one.transcribed),
            ),
          ],
    ),
    ...run.firingPoints.flatMap((one) =>
      one.transcribed == null
        ? []
        : [row(`Rate reached: ${one.firingPoint}`, at(one.reachedAt), '', typedBy(one.transcribed))],
    ),
    ...run.signOffs.flatMap((one) =>
      one.transcribed == null ? [] : [row(label(one.itemKey), one.name, at(one.at), typedBy(one.transcribed))],
    ),
  ];
}
