/** What is left of a run, for writing by hand: each item with its limits, its unit, room for the value, the time and who. */
import type { FuelKey, ModelSheet, SheetLimit, SheetStep, StepItem } from '../../../domain/procedure/modelSheet.ts';
import { formatQuantity } from '../../../domain/quantity/formatQuantity.ts';
import { preferredUnit, type UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import type { Block, Cell } from '../page/blocks.ts';

export type PaperRun = {
  readonly title: string;
  readonly where: string;
  readonly sheet: ModelSheet;
  readonly fuel: FuelKey;
  readonly steps: readonly SheetStep[];
  readonly openItems: ReadonlySet<string>;
  readonly unitSystem: UnitSystem;
};

export function paperBlocks(run: PaperRun): readonly Block[] {
  const steps = run.steps
    .map((step) => ({ step, items: step.items.filter((item) => run.openItems.has(item.key)) }))
    .filter(({ items }) => items.length > 0);
  return [
    { kind: 'heading', level: 1, text: run.title },
    { kind: 'paragraph', text: `${run.where}. Sheet: ${run.sheet.title}, revision ${run.sheet.revision}.` },
    {
      kind: 'notice',
      title: 'Paper in place of the laptop: the hold points stay',
      lines: [
        'Do not light the burner before every line marked F is done. Do not leave before every line marked L is done. Lines marked R are wanted for the registration.',
        'Stop and make safe on any smell of gas, on CO in the room, and on a value beyond a limit marked STOP.',
        'Write the time of day beside each value. Write who measured where it is not the person named below.',
      ],
      tone: 'stop',
    },
    {
      kind: 'facts',
      facts: [
        { label: 'Name', value: LINE },
        { label: 'Licence number', value: LINE },
        { label: 'Day', value: LINE },
        { label: 'Analyser, manometer', value: LINE },
      ],
    },
    ...(steps.length === 0 ? [{ kind: 'paragraph', text: 'Nothing is left open.' } as const] : []),
    ...steps.flatMap(({ step, items }) => stepBlocks(step, items, run)),
    { kind: 'heading', level: 2, text: 'Signed' },
    {
      kind: 'facts',
      facts: [
        { label: 'Licensed person', value: LINE },
        { label: 'Occupant', value: LINE },
      ],
    },
  ];
}

const LINE = '_'.repeat(34);
const VALUE = '_'.repeat(13);
const TIME = '___:___';

function stepBlocks(step: SheetStep, items: readonly StepItem[], run: PaperRun): readonly Block[] {
  const who = step.who === 'licensed' ? ' (licensed person only)' : '';
  const holdPoint = step.needsClear === null ? '' : ` Only when nothing blocks ${step.needsClear}.`;
  return [
    { kind: 'heading', level: 2, text: `${step.title}${who}` },
    ...(step.caution === undefined && holdPoint === ''
      ? []
      : [{ kind: 'paragraph', text: `${step.caution ?? ''}${holdPoint}`.trim(), keepsNext: true } as const]),
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'What', share: 2.1 },
        { header: 'Limits', share: 1.4 },
        { header: 'Written here', share: 1.7 },
        { header: 'Time', width: 46 },
        { header: 'Marks', width: 32 },
      ],
      rows: items.flatMap((item) => itemRows(item, run)),
    },
  ];
}

function itemRows(item: StepItem, run: PaperRun): readonly (readonly Cell[])[] {
  const row = (
    what: string,
    limits: string,
    written: string,
    small: string | null = [conditionText(item, run), item.hint ?? ''].filter((text) => text !== '').join(' ') || null,
  ): readonly Cell[] => [
    { text: what, small },
    { text: limits },
    { text: written },
    { text: TIME },
    { text: item.blocks.map((block) => block.charAt(0).toUpperCase()).join(' ') },
  ];
  switch (item.kind) {
    case 'confirm':
      return [row(item.label, '', [box('yes'), box('no'), ...(item.notApplicable ? [box('n/a')] : [])].join('   '))];
    case 'choose':
      return [row(item.label, '', item.options.map(({ label }) => box(label)).join('\n'))];
    case 'note':
    case 'witness':
    case 'sign-off':
      return [row(item.label, '', VALUE)];
    case 'read':
      return [row(item.label, limitsText(item.quantity, item.point, run), `${VALUE} ${unitText(item.quantity, run)}`)];
    case 'series':
      return [
        row(`${item.label}: rate reached at`, '', ''),
        ...Array.from({ length: run.sheet.steady.minSamples }, (_, index) =>
          item.quantities.map((quantity) =>
            row(
              `${index + 1}. ${quantitySpec(quantity).label}`,
              limitsText(quantity, item.firingPoint, run),
              `${VALUE} ${unitText(quantity, run)}`,
              null,
            ),
          ),
        ).flat(),
      ];
    case 'hold':
      return [row(item.label, `${Math.ceil(item.seconds / 60)} min`, `from ${TIME} to ${TIME}`)];
    case 'tuning':
      return [
        row(item.label, '', `from ${TIME} to ${TIME}`),
        ...item.stages.map((stage) => row(`Stage: ${stage.label}`, '', '', null)),
      ];
    case 'parts':
      return listRows(row, item.label, ['Part', 'Number', 'Serial'], 'No part was changed');
    case 'lockouts':
      return listRows(row, item.label, ['Day, time', `Outside, ${unitText('outdoorC', run)}`, 'Code'], 'No lockout');
    case 'photo':
      return [row(item.label, '', box('photo taken'))];
  }
}

const MOST_LINES = 3;

/** Room for some, and for saying that there were none. */
function listRows(
  row: (what: string, limits: string, written: string, small?: string | null) => readonly Cell[],
  label: string,
  columns: readonly string[],
  none: string,
): readonly (readonly Cell[])[] {
  const line = columns.map((column) => `${column} ${VALUE}`).join('\n');
  return [
    row(label, '', box(none)),
    ...Array.from({ length: MOST_LINES }, (_, index) => row(`${label}, ${index + 1}`, '', line, null)),
  ];
}

/** A box to tick and its words, the first of them on the box's own line. */
function box(words: string): string {
  return `[\u00a0\u00a0]\u00a0${words}`;
}

/** A paper asks everything; which lines hang on an answer is said on it. */
function conditionText({ onlyFor }: StepItem, { steps }: PaperRun): string {
  const { answer, changedPart, foundOutside } = onlyFor ?? {};
  const items = steps.flatMap((step) => step.items);
  const asked = items.find(({ key }) => key === answer?.item);
  const found = items.find(({ key }) => key === foundOutside);
  const words = answer?.is.map((value) => (asked?.kind === 'choose' ? optionLabel(asked, value) : value)).join(' or ');
  return [
    ...(asked === undefined ? [] : [`Only if “${asked.label}” is ${words ?? ''}.`]),
    ...(found === undefined ? [] : [`Only if “${found.label}” is outside its limits.`]),
    ...(changedPart === undefined ? [] : ['Only if a part was changed that wants it.']),
  ].join(' ');
}

function optionLabel(item: Extract<StepItem, { kind: 'choose' }>, value: string): string {
  return item.options.find((option) => option.value === value)?.label ?? value;
}

function limitsText(quantity: QuantityKey, point: string | null, { sheet, fuel, unitSystem }: PaperRun): string {
  const limits = sheet.limits.filter(
    (limit) =>
      limit.quantity === quantity &&
      (limit.point === null || limit.point === point) &&
      (limit.fuel === null || limit.fuel === fuel),
  );
  return limits.length === 0 ? 'none on the sheet' : limits.map((limit) => limitText(limit, unitSystem)).join('; ');
}

function limitText({ quantity, min, max, severity }: SheetLimit, unitSystem: UnitSystem): string {
  const [low, high] = [min, max].map((bound) =>
    bound === undefined ? null : formatQuantity(quantity, bound, unitSystem).text,
  );
  const unit = preferredUnit(quantity, unitSystem).symbol;
  const range =
    low != null && high != null ? `${low} to ${high}` : high != null ? `at most ${high}` : `at least ${low ?? ''}`;
  return `${severity === 'stop' ? 'STOP beyond: ' : ''}${range} ${unit}`.trim();
}

function unitText(quantity: QuantityKey, { unitSystem }: PaperRun): string {
  return preferredUnit(quantity, unitSystem).symbol;
}
