/** What is left of a wait, from its stored start against the clock at every paint; over when it is over, also to the ear. */
import { useEffect, useRef } from 'react';
import { formatSeconds, secondsInWords } from './formatSeconds.ts';
import { secondsLeftOf } from './secondsLeftOf.ts';
import { soundEnd } from './soundEnd.ts';
import { useNow } from './useNow.ts';

export function CountDown({
  startedAt,
  totalS,
  overWords,
  leftWords,
  isSmall = false,
}: {
  readonly startedAt: string;
  readonly totalS: number;
  /** `settled` */
  readonly overWords: string;
  /** `to settle` */
  readonly leftWords: string;
  readonly isSmall?: boolean;
}) {
  const left = secondsLeftOf(startedAt, totalS, useNow(500));
  const isOver = left <= 0;
  const wasOver = useRef(isOver);
  useEffect(() => {
    if (isOver && !wasOver.current) soundEnd();
    wasOver.current = isOver;
  }, [isOver]);
  const share = totalS === 0 ? 1 : 1 - Math.max(0, left) / totalS;
  return (
    <div className="run-countdown" data-over={isOver} data-small={isSmall}>
      <span className="run-countdown-time" role="timer">
        {isOver ? overWords : formatSeconds(left)}
      </span>
      {isOver ? null : <span className="run-countdown-words">{leftWords}</span>}
      <span className="run-countdown-bar" aria-hidden="true">
        <span style={{ inlineSize: `${(100 * share).toFixed(1)}%` }} />
      </span>
      {/* Said once at the end, not every second. */}
      <span className="run-unseen" role="status">
        {isOver ? overWords : `of ${secondsInWords(totalS)}`}
      </span>
    </div>
  );
}
