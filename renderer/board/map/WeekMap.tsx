/** The week's visits where they are: a drawing of its own, without a map behind it, and beside it the same as a list. */
import { SegmentedControl } from '@mantine/core';
import { useMemo, useState } from 'react';
import { shortDayWords } from '../../kit/dayWords.ts';
import { EmptyState } from '../../kit/EmptyState.tsx';
import type { BoardData } from '../boardModel.ts';
import { MapDrawing } from './MapDrawing.tsx';
import { MapList } from './MapList.tsx';
import { weekMapOf } from './weekMapModel.ts';

const ALL = 'all';

export function WeekMap({
  data,
  days,
  day,
}: {
  readonly data: BoardData;
  readonly days: readonly string[];
  /** The day that was asked for. */
  readonly day: string;
}) {
  // A day without visits would show nothing: then all of the week.
  const [chosen, setChosen] = useState(data.visits.some(({ plannedOn }) => plannedOn === day) ? day : ALL);
  const shown = chosen === ALL || !days.includes(chosen) ? null : chosen;
  const model = useMemo(() => weekMapOf(data, days, shown), [data, days, shown]);
  const [siteId, setSiteId] = useState<string | null>(null);
  return (
    <div className="lo-map-screen">
      <SegmentedControl
        aria-label="Which day of the week"
        value={shown ?? ALL}
        data={[{ value: ALL, label: 'All of it' }, ...days.map((on) => ({ value: on, label: shortDayWords(on) }))]}
        onChange={setChosen}
      />
      {model.people.length === 0 && model.unmanned.length === 0 ? (
        <EmptyState title={shown === null ? 'Nothing is booked in these days' : 'Nothing is booked on this day'}>
          Visits stand here where their site is, once they are booked.
        </EmptyState>
      ) : (
        <div className="lo-map-split">
          <MapDrawing model={model} isOneDay={shown !== null} siteId={siteId} />
          <MapList model={model} isOneDay={shown !== null} onSite={setSiteId} />
        </div>
      )}
    </div>
  );
}
