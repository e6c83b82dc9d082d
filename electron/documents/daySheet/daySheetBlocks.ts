/** One technician's day on paper: in order, with what gets them in, what to bring, and what is still open. */
import type { Block, Fact } from '../page/blocks.ts';

export type DaySheetStop = {
  readonly fromMin: number | null;
  readonly toMin: number | null;
  /** Minutes on the way there; null: a place is not on the map. */
  readonly wayMin: number | null;
  readonly promised: string | null;
  readonly state: string;
  readonly customerName: string;
  readonly phone: string | null;
  readonly address: string;
  readonly access: string | null;
  readonly crew: readonly string[];
  readonly note: string | null;
  readonly jobs: readonly {
    readonly kind: string;
    readonly appliance: string;
    readonly serial: string;
    readonly fuel: string | null;
    readonly inputKw: number | null;
    readonly sheet: string | null;
    readonly parts: readonly string[];
    readonly readinessGaps: readonly string[];
    /** Given, but long ago: with how long. */
    readonly readinessAged: readonly string[];
    readonly makeSafes: readonly string[];
  }[];
};

export type DaySheet = {
  readonly companyName: string;
  readonly technicianName: string;
  readonly dayText: string;
  readonly stops: readonly DaySheetStop[];
  readonly homeMin: number | null;
};

export function daySheetBlocks(sheet: DaySheet): readonly Block[] {
  return [
    { kind: 'heading', level: 1, text: `${sheet.technicianName}, ${sheet.dayText}` },
    {
      kind: 'paragraph',
      text:
        sheet.stops.length === 0
          ? 'No visit is planned.'
          : `${sheet.companyName} · ${sheet.stops.length === 1 ? '1 visit' : `${sheet.stops.length} visits`}${sheet.homeMin === null ? '' : ` · home at about ${clockText(sheet.homeMin)}`}`,
      tone: 'muted',
    },
    ...sheet.stops.map((stop, index): Block => ({ kind: 'together', blocks: stopBlocks(stop, index) })),
    {
      kind: 'paragraph',
      text: 'Way times are estimates by distance. On gas smell or a CO alarm: out first, touch no switch, call from outside.',
      tone: 'muted',
    },
  ];
}

function stopBlocks(stop: DaySheetStop, index: number): readonly Block[] {
  const time =
    stop.fromMin === null
      ? 'some time that day'
      : `${clockText(stop.fromMin)}${stop.toMin === null ? '' : `–${clockText(stop.toMin)}`}`;
  const open = stop.jobs.flatMap((job) => job.makeSafes);
  const facts: Fact[] = [
    { label: 'Where', value: stop.address },
    { label: 'Phone', value: stop.phone ?? 'not on file' },
    { label: 'Getting in', value: stop.access ?? 'nothing noted: ask' },
    { label: 'Promised arrival', value: stop.promised ?? 'nothing promised' },
    { label: 'Way there', value: stop.wayMin === null ? 'not known' : `about ${stop.wayMin} min` },
    ...(stop.crew.length > 1 ? [{ label: 'Together with', value: stop.crew.join(', ') }] : []),
    ...(stop.note === null ? [] : [{ label: 'Note', value: stop.note }]),
  ];
  return [
    { kind: 'heading', level: 2, text: `${index + 1}. ${time}: ${stop.customerName}` },
    ...(open.length === 0
      ? []
      : [{ kind: 'notice', title: 'Made safe and still open', lines: open, tone: 'stop' } as const]),
    ...(stop.state === 'pencilled'
      ? [{ kind: 'paragraph', text: 'Pencilled in: not firm until readiness is given.', tone: 'strong' } as const]
      : []),
    { kind: 'facts', facts },
    ...stop.jobs.map((job): Block => ({ kind: 'together', blocks: jobBlocks(job) })),
  ];
}

function jobBlocks(job: DaySheetStop['jobs'][number]): readonly Block[] {
  const input = job.inputKw === null ? null : `${Math.round(job.inputKw * 10) / 10} kW`;
  return [
    { kind: 'heading', level: 3, text: `${job.kind}: ${job.appliance}` },
    {
      kind: 'facts',
      facts: [
        { label: 'Serial', value: job.serial },
        { label: 'Fuel and input', value: [job.fuel, input].filter((part) => part !== null).join(', ') || 'not known' },
        { label: 'Model sheet', value: job.sheet ?? 'none on the laptop for this model' },
        { label: 'Readiness', value: job.readinessGaps.length === 0 ? 'nothing open' : 'open:' },
      ],
    },
    ...(job.readinessGaps.length === 0 ? [] : [{ kind: 'list', items: job.readinessGaps } as const]),
    ...(job.readinessAged.length === 0
      ? []
      : [
          { kind: 'paragraph', text: 'Answered long ago: ask again before setting out.', tone: 'strong' } as const,
          { kind: 'list', items: job.readinessAged } as const,
        ]),
    ...(job.parts.length === 0
      ? []
      : [{ kind: 'paragraph', text: `In the van (common practice): ${job.parts.join(', ')}.` } as const]),
  ];
}

export function clockText(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}
