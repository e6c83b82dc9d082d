/** The point a quantity is read at, as people say it. Firing points carry the label of their sheet. */
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';

const COMMON_POINTS: Readonly<Record<string, string>> = {
  static: 'static, burner off',
  dynamic: 'dynamic, burner at high fire',
  'dynamic-all-on': 'dynamic, every gas appliance on',
  cold: 'cold',
  'after-purge': 'after the purge',
  hot: 'hot',
  before: 'before',
  after: 'after',
};

export function pointWords(point: string | null, sheet: Pick<ModelSheet, 'firingPoints'>): string {
  if (point === null) return '';
  const firingPoint = sheet.firingPoints.find((one) => one.key === point);
  return firingPoint?.label ?? COMMON_POINTS[point] ?? point.replaceAll('-', ' ');
}
