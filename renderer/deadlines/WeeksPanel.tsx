/** How many last days fall into each of the coming weeks; a week narrows the list below to it. */
import { Button, Group } from '@mantine/core';
import type { OutputOf } from '../../electron/contract/index.ts';
import { dayWords } from '../kit/dayWords.ts';
import { Panel } from '../kit/Panel.tsx';
import { addDays, mondayOf } from '../visits/week.ts';

const WEEKS = 8;

function weekSums({ toSubmit, late, withMaker }: OutputOf<'deadlines.get'>, later: number): string {
  const rest = withMaker === 0 ? '' : ` ${withMaker} with the maker, not confirmed.`;
  return `${toSubmit} to submit, ${late} of them late${later === 0 ? '' : `, ${later} after these weeks`}.${rest}`;
}

export function WeeksPanel({
  counts,
  today,
  week,
  onWeek,
}: {
  readonly counts: OutputOf<'deadlines.get'>;
  readonly today: string;
  readonly week: string;
  readonly onWeek: (week: string) => void;
}) {
  const thisMonday = mondayOf(today);
  const countOf = new Map(counts.weeks.map(({ mondayOn, count }) => [mondayOn, count]));
  const weeks = Array.from({ length: WEEKS }, (_, index) => addDays(thisMonday, index * 7));
  const later = counts.weeks
    .filter(({ mondayOn }) => mondayOn > (weeks.at(-1) ?? ''))
    .reduce((sum, { count }) => sum + count, 0);
  return (
    <Panel title="By week">
      <p style={{ margin: 0 }}>{weekSums(counts, later)}</p>
      <Group gap="xs" role="group" aria-label="Weeks">
        {weeks.map((mondayOn, index) => (
          <Button
            key={mondayOn}
            variant={week === mondayOn ? 'filled' : 'default'}
            aria-pressed={week === mondayOn}
            onClick={() => onWeek(week === mondayOn ? '' : mondayOn)}
          >
            {index === 0 ? 'This week' : `Week of ${dayWords(mondayOn).replace(/ \d{4}$/, '')}`}:{' '}
            {countOf.get(mondayOn) ?? 0}
          </Button>
        ))}
      </Group>
    </Panel>
  );
}
