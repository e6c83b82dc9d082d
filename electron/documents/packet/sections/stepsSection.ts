/** What was checked, set, chosen and told, step by step as the sheet walks it, with waits and the burner's own calibration. */
import { dayText, momentText } from '../../documentDates.ts';
import type { Block, Cell } from '../../page/blocks.ts';
import type { OpenAnswer, PacketView, SheetItem, SheetStep } from '../packetView.ts';
import { yesNoText } from '../packetWords.ts';

export function stepsSection(view: PacketView): readonly Block[] {
  const answers = Map.groupBy(view.record.run.answers, (answer) => answer.itemKey);
  const blocks = view.record.sheet.steps.flatMap((step) => {
    const rows = step.items.flatMap((item) => itemRows(view, item, answers.get(item.key) ?? []));
    return rows.length === 0 ? [] : stepBlocks(step, rows);
  });
  const unknown = view.record.run.answers.filter((answer) => view.itemOf(answer.itemKey) === undefined);
  const strays: readonly Block[] =
    unknown.length === 0
      ? []
      : [
          { kind: 'heading', level: 3, text: 'Answers to items the sheet no longer has' },
          stepTable(unknown.map((answer) => answerRow(view, answer, undefined))),
        ];
  if (blocks.length + strays.length === 0) return [];
  return [{ kind: 'heading', level: 2, text: 'Checks and settings, step by step' }, ...blocks, ...strays];
}

function stepBlocks(step: SheetStep, rows: readonly (readonly Cell[])[]): readonly Block[] {
  return [{ kind: 'heading', level: 3, text: step.title }, stepTable(rows)];
}

function stepTable(rows: readonly (readonly Cell[])[]): Block {
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Asked', share: 2.1 },
      { header: 'Answer', share: 2 },
      { header: 'By', share: 1.1 },
      { header: 'At', width: 34 },
    ],
    rows,
  };
}

function itemRows(view: PacketView, item: SheetItem, answers: readonly OpenAnswer[]): readonly (readonly Cell[])[] {
  if (item.kind === 'hold') return holdRows(view, item);
  if (item.kind === 'tuning') return tuningRows(view, item);
  return answers.map((answer) => answerRow(view, answer, item));
}

function answerRow(view: PacketView, answer: OpenAnswer, item: SheetItem | undefined): readonly Cell[] {
  const option = item?.options.find((one) => one.value === answer.value)?.label;
  const value = answer.words ?? option ?? (answer.value === null ? null : plainValue(answer.value));
  return [
    { text: item?.label ?? answer.itemKey },
    {
      text: value ?? 'not possible',
      tone: answer.value === 'no' ? 'strong' : 'plain',
      small: answer.reason === null ? null : `because: ${answer.reason}`,
    },
    { text: view.nameOf(answer.byId), tone: 'muted' },
    { text: momentText(answer.at, view.timeZone, view.visitOn), tone: 'muted' },
  ];
}

function plainValue(value: string): string {
  return /^\d{4}-\d{2}-\d{2}$/u.test(value) ? dayText(value) : yesNoText(value);
}

function holdRows(view: PacketView, item: SheetItem): readonly (readonly Cell[])[] {
  return view.record.run.holds
    .filter((hold) => hold.itemKey === item.key)
    .map((hold) => {
      const at = (instant: string) => momentText(instant, view.timeZone, view.visitOn);
      const ran = hold.endedAt === null ? null : (Date.parse(hold.endedAt) - Date.parse(hold.startedAt)) / 1000;
      const isLong = ran !== null && ran >= Number(hold.requiredS);
      const text =
        ran === null ? 'running at sealing' : `waited ${durationText(ran)} of ${durationText(Number(hold.requiredS))}`;
      return [
        { text: item.label },
        {
          text,
          tone: isLong ? 'plain' : 'strong',
          small: hold.clockJumped ? 'not proven: the clock was moved while it ran' : null,
        },
        { text: '' },
        { text: at(hold.startedAt), tone: 'muted' },
      ] satisfies Cell[];
    });
}

function tuningRows(view: PacketView, item: SheetItem): readonly (readonly Cell[])[] {
  const at = (instant: string) => momentText(instant, view.timeZone, view.visitOn);
  return view.record.run.tunings
    .filter((tuning) => tuning.itemKey === item.key)
    .map((tuning) => {
      const stages = tuning.stages.map((stage) => `${stage.stageKey} ${at(stage.reachedAt)}`).join(', ');
      const end =
        tuning.interruptedAt !== null
          ? `interrupted ${at(tuning.interruptedAt)}: ${tuning.interruptedReason ?? 'no reason given'}`
          : tuning.finishedAt === null
            ? 'not finished'
            : `finished ${at(tuning.finishedAt)}`;
      return [
        { text: item.label },
        {
          text: end,
          tone: tuning.finishedAt === null ? 'strong' : 'plain',
          small: stages === '' ? null : `stages: ${stages}`,
        },
        { text: '' },
        { text: at(tuning.startedAt), tone: 'muted' },
      ] satisfies Cell[];
    });
}

function durationText(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = Math.round(seconds % 60);
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}
