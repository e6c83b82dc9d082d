/** A length of time as a clock shows it: `4:07`, and with hours `1:02:09`. */
export function formatSeconds(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = String(whole % 60).padStart(2, '0');
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, '0')}:${rest}` : `${minutes}:${rest}`;
}

/** The same in words, for a screen reader and for limits: `5 min`, `30 s`, `1 h 20 min`. */
export function secondsInWords(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = whole % 60;
  const parts = [
    hours > 0 ? `${hours} h` : '',
    minutes > 0 ? `${minutes} min` : '',
    rest > 0 || whole === 0 ? `${rest} s` : '',
  ];
  return parts.filter((part) => part !== '').join(' ');
}
