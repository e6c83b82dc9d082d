/** The clock, read again on every paint; the interval only repaints, nothing is counted in it. */
import { useEffect, useState } from 'react';

export function useNow(everyMs = 500): string {
  const [, repaint] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => repaint((count) => count + 1), everyMs);
    return () => clearInterval(timer);
  }, [everyMs]);
  return new Date().toISOString();
}
