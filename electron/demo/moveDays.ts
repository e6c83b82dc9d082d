/** The demo's days as written, moved by whole days: whatever is a day or a moment in the data goes along, whatever it is of. */
import { Temporal } from 'temporal-polyfill';

const IS_DATED = /^\d{4}-\d{2}-\d{2}(T[\d:.]+Z)?$/;

/** Moved by as many days as lie between `fromOn` and `toOn`; times of day stay. */
export function moveDays<T>(data: T, fromOn: string, toOn: string): T {
  const days = Temporal.PlainDate.from(fromOn.slice(0, 10)).until(toOn.slice(0, 10), { largestUnit: 'days' }).days;
  const move = (text: string): string =>
    `${Temporal.PlainDate.from(text.slice(0, 10)).add({ days }).toString()}${text.slice(10)}`;
  return JSON.parse(JSON.stringify(data), (_key, value: unknown) =>
    typeof value === 'string' && IS_DATED.test(value) ? move(value) : value,
  ) as T;
}
