/** The numbers of one chart, visit by visit, for whoever reads rather than looks. */
import { TREND_UNITS } from '../../domain/trend/trendQuantity.ts';
import type { TrendPoint, TrendSeries } from '../../domain/trend/trendSeries.ts';
import { DateText } from '../kit/DateText.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { QuantityText } from '../kit/QuantityText.tsx';
import { JOB_KIND_WORDS } from '../kit/tradeWords.ts';

export function TrendTable({ series, label }: { readonly series: TrendSeries; readonly label: string }) {
  return (
    <PlainTable
      caption={`${label} over the years`}
      rows={series.points}
      keyOf={({ runId }) => runId}
      columns={[
        { label: 'Visit', cell: ({ on }) => <DateText day={on} /> },
        {
          label: 'Kind',
          cell: ({ kind, startsBaseline }) => `${JOB_KIND_WORDS[kind]}${startsBaseline ? ', new baseline' : ''}`,
        },
        {
          label: 'Found',
          cell: (point) => <Value series={series} value={point.foundValue} point={point} />,
          isNumber: true,
        },
        { label: 'Left', cell: (point) => <Value series={series} value={point.value} point={point} />, isNumber: true },
      ]}
    />
  );
}

function Value({
  series,
  value,
  point,
}: {
  readonly series: TrendSeries;
  readonly value: number | null;
  readonly point: TrendPoint;
}) {
  if (value === null) return null;
  const quantity = TREND_UNITS[series.trend];
  return (
    <>
      {point.comparator === '=' ? '' : `${point.comparator} `}
      {quantity === null ? value.toFixed(2) : <QuantityText quantity={quantity} value={value} />}
    </>
  );
}
