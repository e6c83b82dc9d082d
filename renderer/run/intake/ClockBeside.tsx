/** What the instrument's own clock shows now: where it differs from the laptop's, the file's times are set right by that with one press. */
import { useId, useState } from 'react';
import { analyserClockOffset } from '../../../domain/intake/clockOffset.ts';
import type { ClockProblem } from '../../../domain/judgement/mistakes/clockDifferences.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { lengthWords } from '../../photos/awayWords.ts';
import { isAltKey } from '../focus/isAltKey.ts';
import { parseTimeOfDay } from '../note/parseTimeOfDay.ts';
import { useRun } from '../state/RunContext.ts';

export function ClockBeside({
  taken,
  onTake,
}: {
  /** By how much the times are set right; null: they are left as the file has them. */
  readonly taken: ClockProblem | null;
  readonly onTake: (problem: ClockProblem | null) => void;
}) {
  const { view } = useRun();
  const id = useId();
  const [text, setText] = useState('');
  const [found, setFound] = useState<ClockProblem | 'agrees' | 'unreadable' | null>(null);
  const look = (typed: string) => {
    setText(typed);
    onTake(null);
    const shown = parseTimeOfDay(typed);
    if (shown === null) {
      setFound(typed.trim() === '' ? null : 'unreadable');
      return;
    }
    const { timeZone } = view.record.site;
    setFound(analyserClockOffset({ shown, now: new Date().toISOString(), timeZone }) ?? 'agrees');
  };
  const isProblem = found !== null && typeof found === 'object';
  return (
    <div className="run-box-row">
      <label htmlFor={id}>Its clock shows now</label>
      <input
        id={id}
        className="run-text"
        type="text"
        autoComplete="off"
        size={7}
        placeholder="14:32"
        value={text}
        onChange={(event) => look(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (!isProblem || !isAltKey(event, '1')) return;
          event.preventDefault();
          onTake(taken === null ? found : null);
        }}
      />
      {isProblem ? (
        <button
          type="button"
          className="run-button"
          aria-pressed={taken !== null}
          onClick={() => onTake(taken === null ? found : null)}
        >
          <KeyHint keys="Alt+1" /> {taken === null ? 'Set the file’s times right' : 'Leave the file’s times'}
        </button>
      ) : null}
      <span role="status">{foundWords(found)}</span>
    </div>
  );
}

function foundWords(found: ClockProblem | 'agrees' | 'unreadable' | null): string {
  if (found === null) return '';
  if (found === 'agrees') return 'The same as the laptop’s.';
  if (found === 'unreadable') return 'Not a time of day yet.';
  const away = `${lengthWords(found.offsetS)} ${found.offsetS > 0 ? 'ahead of' : 'behind'} the laptop’s`;
  return found.isTimeZone ? `${away}: another time zone, or summer time.` : `${away}.`;
}
