/** Who may do these jobs at that time, and why the others may not or had better not. */
import { isForbidding } from '../../domain/schedule/obstacles.ts';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { useOperation } from '../operations/useOperation.ts';
import { obstacleWords } from './conflictWords.ts';

export function WhoMayPanel({
  jobIds,
  on,
  startMin,
  durationMin,
}: {
  readonly jobIds: readonly string[];
  readonly on: string;
  readonly startMin: number | null;
  readonly durationMin: number;
}) {
  const whoMay = useOperation('visits.whoMay', { jobIds: [...jobIds], on, startMin, durationMin });
  return (
    <section aria-label="Who may do it">
      <h3>Who may do it on {dayWords(on)}</h3>
      <Answer of={whoMay}>
        {(people) => (
          <ul className="lo-board-conflicts">
            {people
              .toSorted((a, b) => weightOf(a.obstacles) - weightOf(b.obstacles))
              .map(({ staffId, name, obstacles }) => (
                <li key={staffId}>
                  <strong>{name}</strong>:{' '}
                  {obstacles.length === 0 ? (
                    <span style={{ color: 'var(--lo-fir)' }}>may</span>
                  ) : (
                    <span className="lo-faint">
                      {obstacles.some(isForbidding) ? 'may not: ' : 'may, but: '}
                      {obstacles.map(obstacleWords).join('; ')}
                    </span>
                  )}
                </li>
              ))}
          </ul>
        )}
      </Answer>
    </section>
  );
}

/** Those who may come first, then those with doubts. */
function weightOf(obstacles: Parameters<typeof isForbidding>[0][]): number {
  return (obstacles.some(isForbidding) ? 100 : 0) + obstacles.length;
}
