/** A stored instant as the clock on the wall of the site showed it: `14:03`, with seconds `14:03:27`. */
export function timeOfDay(instant: string, timeZone: string, withSeconds = false): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hour: '2-digit',
    minute: '2-digit',
    ...(withSeconds ? { second: '2-digit' } : {}),
    hourCycle: 'h23',
  }).format(new Date(instant));
}
