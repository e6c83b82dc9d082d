/** What an appliance's visits have read over the years: a picture for each number, with the same as a table beside it. */
import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { type TrendSeries, trendSeries } from '../../domain/trend/trendSeries.ts';
import { trendKey } from '../../domain/trend/trendValues.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { TrendChart } from './TrendChart.tsx';
import { TrendTable } from './TrendTable.tsx';
import { pointLabel, seriesLabel } from './trendWords.ts';
import './trends.css';

export type Trends = OutputOf<'service.getTrends'>;

export function TrendsPanel({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('service.getTrends', { applianceId });
  return (
    <Panel title="Over the years">
      <Answer of={found}>{(trends) => <Series trends={trends} />}</Answer>
    </Panel>
  );
}

function Series({ trends }: { readonly trends: Trends }) {
  const points = trends.firingPoints.length > 0 ? trends.firingPoints.map(({ key }) => key) : pointsRead(trends);
  const all = trendSeries(trends.runs, points).filter((series) => SHOWN.has(series.trend));
  const [chosen, choose] = useState<string>('flue');
  if (all.length === 0) {
    return (
      <EmptyState title="Nothing to follow yet">
        The readings of every visit stand here, once the first one has been made.
      </EmptyState>
    );
  }
  const groups = groupsOf(all);
  const group = groups.find(({ key }) => key === chosen) ?? groups[0];
  return (
    <>
      <NativeSelect
        label="Show"
        maw="22rem"
        value={group?.key ?? ''}
        data={groups.map(({ key, label }) => ({ value: key, label }))}
        onChange={(event) => choose(event.currentTarget.value)}
      />
      <div className="trend-grid">
        {(group?.series ?? []).map((series) => (
          <figure key={trendKey(series)} className="trend-figure">
            <figcaption>{seriesLabel(series, pointLabel(series.point, trends.firingPoints))}</figcaption>
            <TrendChart series={series} limits={trends.limits} />
            <TrendTable series={series} label={seriesLabel(series, pointLabel(series.point, trends.firingPoints))} />
          </figure>
        ))}
      </div>
      <p className="lo-faint">
        Band: limits of the sheet{trends.sheetTitle === null ? ' (none chosen)' : ` “${trends.sheetTitle}”`}. Open mark:
        as it was found. Upright line: a new baseline; what was read before says nothing about what comes after.
      </p>
    </>
  );
}

/** Without a sheet: wherever CO₂ or O₂ was read. */
function pointsRead(trends: Trends): readonly string[] {
  const flue = trends.runs.flatMap((run) => run.readings).filter((one) => one.quantity === 'o2DryVolPct');
  return [...new Set(flue.flatMap((one) => one.point ?? []))];
}

type Group = { readonly key: string; readonly label: string; readonly series: readonly TrendSeries[] };

function groupsOf(all: readonly TrendSeries[]): readonly Group[] {
  return GROUPS.flatMap(({ key, label, trends }) => {
    const series = all.filter(({ trend }) => trends.includes(trend));
    return series.length === 0 ? [] : [{ key, label, series }];
  });
}

const GROUPS: readonly {
  readonly key: string;
  readonly label: string;
  readonly trends: readonly TrendSeries['trend'][];
}[] = [
  { key: 'flue', label: 'Flue gas: CO₂, O₂, CO', trends: ['co2', 'o2', 'co'] },
  {
    key: 'heat',
    label: 'Flue and water temperatures',
    trends: ['flue-temperature', 'flue-over-return', 'return-temperature', 'delta-t'],
  },
  {
    key: 'gas',
    label: 'Gas pressure and input',
    trends: ['dynamic-inlet-pressure', 'all-on-inlet-pressure', 'output'],
  },
  { key: 'pressure', label: 'System pressure', trends: ['cold-pressure', 'hot-pressure', 'pressure-rise'] },
  {
    key: 'water',
    label: 'Water quality',
    trends: ['ph', 'conductivity', 'hardness', 'glycol-share', 'neutraliser-outlet-ph'],
  },
  { key: 'hot-water', label: 'Hot water', trends: ['hot-water-flow', 'hot-water-rise'] },
];

const SHOWN: ReadonlySet<TrendSeries['trend']> = new Set(GROUPS.flatMap(({ trends }) => trends));
