/** English names of months and weekdays; the week begins on Monday, as in ISO 8601. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
export const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

export const SHORT_MONTHS = MONTHS.map((month) => month.slice(0, 3));
export const SHORT_WEEKDAYS = WEEKDAYS.map((day) => day.slice(0, 3));
