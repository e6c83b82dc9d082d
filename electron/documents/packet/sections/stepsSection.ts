/** What was checked, set, chosen and told, step by step as the sheet walks it, with waits and the burner's own calibration. */
import { toldAnswers } from '../../../../domain/procedure/toldAnswers.ts';
import { typedWithUnit } from '../../../../domain/quantity/typedWithUnit.ts';
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
          stepTable(
            unknown.map((answer) => answerRow(view, answer, undefined, false)),
            true,
          ),
        ];
  if (blocks.length + strays.length === 0) return [];
  return [{ kind: 'heading', level: 2, text: 'Checks and settings, step by step' }, ...blocks, ...strays];
}

/** Mostly one person answers a whole step: then the name stands once, above it. */
function stepBlocks(step: SheetStep, rows: readonly Row[]): readonly Block[] {
  const names = new Set(rows.map((row) => row.by).filter((name) => name !== null));
  const [only] = names;
  const title = names.size === 1 && only !== undefined ? `${step.title} · ${only}` : step.title;
  return [{ kind: 'heading', level: 3, text: title }, stepTable(rows, names.size > 1)];
}

type Row = { readonly asked: Cell; readonly answer: Cell; readonly by: string | null; readonly at: string };

function stepTable(rows: readonly Row[], showsNames: boolean): Block {
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Asked', share: 2.2 },
      { header: 'Answer', share: 2 },
      ...(showsNames ? [{ header: 'By', share: 1.1 }] : []),
      { header: 'At', width: 34 },
    ],
    rows: rows.map(({ asked, answer, by, at }): Cell[] => [
      asked,
      answer,
      ...(showsNames ? [{ text: by ?? '', tone: 'muted' } as const] : []),
      { text: at, tone: 'muted' },
    ]),
  };
}

function itemRows(view: PacketView, item: SheetItem, answers: readonly OpenAnswer[]): readonly Row[] {
  if (item.kind === 'hold') return holdRows(view, item);
  if (item.kind === 'tuning') return tuningRows(view, item);
  if (item.kind === 'parts' || item.kind === 'lockouts') {
    const rows = listRows(view, item);
    if (rows.length > 0) return rows;
  }
  const told = toldAnswers(answers);
  return told.map((answer, index) => answerRow(view, answer, item, index < told.length - 1));
}

function answerRow(
  view: PacketView,
  answer: OpenAnswer,
  item: SheetItem | undefined,
  isFollowedByAnother: boolean,
): Row {
  const option = item?.options.find((one) => one.value === answer.value)?.label;
  const value = answer.words ?? option ?? (answer.value === null ? null : plainValue(answer.value));
  const small = [
    answer.reason === null ? null : `because: ${answer.reason}`,
    answer.instrumentId == null ? null : `with ${view.instrumentLabel(answer.instrumentId) ?? 'an unknown instrument'}`,
    isFollowedByAnother ? 'answered again later' : null,
    answer.transcribed == null ? null : 'from paper',
  ]
    .filter((one) => one !== null)
    .join(' · ');
  return {
    asked: { text: item?.label ?? answer.itemKey },
    answer: {
      text: value ?? 'not possible',
      tone: answer.value === 'no' ? 'strong' : 'plain',
      small: small === '' ? null : small,
    },
    by: view.nameOf(answer.byId),
    at: momentText(answer.at, view.timeZone, view.visitOn),
  };
}

function plainValue(value: string): string {
  return /^\d{4}-\d{2}-\d{2}$/u.test(value) ? dayText(value) : yesNoText(value);
}

function holdRows(view: PacketView, item: SheetItem): readonly Row[] {
  return view.record.run.holds
    .filter((hold) => hold.itemKey === item.key)
    .map((hold) => {
      const ran = hold.endedAt === null ? null : (Date.parse(hold.endedAt) - Date.parse(hold.startedAt)) / 1000;
      const asked = Number(hold.requiredS);
      return {
        asked: { text: item.label },
        answer: {
          text: ran === null ? 'running at sealing' : `waited ${durationText(ran)}; ${durationText(asked)} asked for`,
          tone: ran !== null && ran >= asked ? 'plain' : 'strong',
          small:
            hold.transcribed == null
              ? hold.clockJumped
                ? 'not proven: the clock was moved while it ran'
                : null
              : 'from paper: not proven by the app',
        },
        by: null,
        at: momentText(hold.startedAt, view.timeZone, view.visitOn),
      } satisfies Row;
    });
}

/** Parts and lockouts: one row each. Where there are none, the answer that said so is all there is. */
function listRows(view: PacketView, item: SheetItem): readonly Row[] {
  const { parts = [], lockouts = [] } = view.record.run;
  const moment = (instant: string) => momentText(instant, view.timeZone, view.visitOn);
  return [
    ...parts
      .filter((part) => part.itemKey === item.key)
      .map(
        (part): Row => ({
          asked: { text: item.label },
          answer: {
            text: `${part.label}, ${part.partNumber}`,
            small: part.serial === null ? null : `serial ${part.serial}`,
          },
          by: view.nameOf(part.byId),
          at: moment(part.at),
        }),
      ),
    ...lockouts
      .filter((lockout) => lockout.itemKey === item.key)
      .map(
        (lockout): Row => ({
          asked: { text: item.label },
          answer: {
            text: moment(lockout.happenedAt),
            small: [
              lockout.outdoorTypedText === null
                ? 'outdoor temperature not known'
                : `${typedWithUnit(lockout.outdoorTypedText, lockout.outdoorTypedUnit)} outside`,
              ...(lockout.code === null ? [] : [`code ${lockout.code}`]),
            ].join(' · '),
          },
          by: view.nameOf(lockout.byId),
          at: moment(lockout.at),
        }),
      ),
  ];
}

function tuningRows(view: PacketView, item: SheetItem): readonly Row[] {
  const at = (instant: string) => momentText(instant, view.timeZone, view.visitOn);
  return view.record.run.tunings
    .filter((tuning) => tuning.itemKey === item.key)
    .map((tuning) => {
      const stages = tuning.stages.map((stage) => `${stage.stageKey} ${at(stage.reachedAt)}`).join(', ');
      return {
        asked: { text: item.label },
        answer: {
          text: tuningEnd(tuning, at),
          tone: tuning.finishedAt === null ? 'strong' : 'plain',
          small:
            [stages === '' ? null : `stages: ${stages}`, tuning.transcribed == null ? null : 'from paper']
              .filter((part) => part !== null)
              .join(' · ') || null,
        },
        by: null,
        at: at(tuning.startedAt),
      } satisfies Row;
    });
}

function tuningEnd(tuning: PacketView['record']['run']['tunings'][number], at: (instant: string) => string): string {
  if (tuning.interruptedAt !== null) {
    return `interrupted ${at(tuning.interruptedAt)}: ${tuning.interruptedReason ?? 'no reason given'}`;
  }
  return tuning.finishedAt === null ? 'not finished' : `finished ${at(tuning.finishedAt)}`;
}

function durationText(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = Math.round(seconds % 60);
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}
