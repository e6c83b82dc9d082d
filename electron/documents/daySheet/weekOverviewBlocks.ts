/** A week on paper: a table per day with everybody's visits in the order of the day. */
import type { Block } from '../page/blocks.ts';
import { clockText } from './daySheetBlocks.ts';

export type WeekOverview = {
  readonly companyName: string;
  readonly title: string;
  readonly days: readonly {
    readonly dayText: string;
    /** Who is away that day, with the reason. */
    readonly away: readonly string[];
    readonly visits: readonly {
      readonly fromMin: number | null;
      readonly toMin: number | null;
      readonly crew: string;
      readonly customerName: string;
      readonly address: string;
      readonly what: string;
      readonly state: string;
    }[];
  }[];
};

export function weekOverviewBlocks(week: WeekOverview): readonly Block[] {
  return [
    { kind: 'heading', level: 1, text: week.title },
    { kind: 'paragraph', text: week.companyName, tone: 'muted' },
    ...week.days.flatMap(({ dayText, away, visits }): readonly Block[] => [
      { kind: 'heading', level: 2, text: dayText },
      ...(away.length === 0 ? [] : [{ kind: 'paragraph', text: `Away: ${away.join('; ')}.`, tone: 'muted' } as const]),
      visits.length === 0
        ? { kind: 'paragraph', text: 'No visit.', tone: 'muted' }
        : {
            kind: 'table',
            columns: [
              { header: 'Time', width: 66 },
              { header: 'Who', share: 1.8 },
              { header: 'Customer', share: 2.5 },
              { header: 'Where', share: 3.9 },
              { header: 'What', share: 3.6 },
              { header: 'State', width: 50 },
            ],
            rows: visits.map((visit) => [
              {
                text:
                  visit.fromMin === null
                    ? 'any time'
                    : `${clockText(visit.fromMin)}${visit.toMin === null ? '' : `–${clockText(visit.toMin)}`}`,
              },
              { text: visit.crew },
              { text: visit.customerName },
              { text: visit.address },
              { text: visit.what },
              { text: visit.state },
            ]),
          },
    ]),
  ];
}
