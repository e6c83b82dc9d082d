/** What a number followed over the years is called. */
import { TREND_LABELS } from '../../domain/trend/symptoms.ts';
import type { TrendSeries } from '../../domain/trend/trendSeries.ts';
import type { OutputOf } from '../../electron/contract/index.ts';

export function pointLabel(
  point: string | null,
  firingPoints: OutputOf<'service.getTrends'>['firingPoints'],
): string | null {
  if (point === null) return null;
  return firingPoints.find(({ key }) => key === point)?.label.toLowerCase() ?? point.replaceAll('-', ' ');
}

export function seriesLabel({ trend }: Pick<TrendSeries, 'trend'>, point: string | null): string {
  return point === null ? TREND_LABELS[trend] : `${TREND_LABELS[trend]}, ${point}`;
}
