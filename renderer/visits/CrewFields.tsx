/** Who goes: everybody who could, what each does there, and why somebody may not do the gas work. */
import { NativeSelect } from '@mantine/core';
import { obstacleWords } from '../board/conflictWords.ts';
import { readDay } from '../form/FormReader.ts';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { LICENCE } from '../kit/errorWords.ts';
import { Note } from '../kit/Note.tsx';
import { CREW_ROLE_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function CrewFields({
  jobIds,
  plannedOn,
  crew,
  error,
  onCrew,
}: {
  readonly jobIds: readonly string[];
  /** As typed; licences are held against this day, or today's while it is not readable. */
  readonly plannedOn: string;
  readonly crew: Readonly<Record<string, string>>;
  readonly error: string | undefined;
  readonly onCrew: (crew: Readonly<Record<string, string>>) => void;
}) {
  const { today } = useAppStatus();
  const read = readDay(plannedOn);
  const isDayGiven = read.ok && read.day !== null;
  const on = read.ok && read.day !== null ? read.day : today;
  const whoMay = useOperation('visits.whoMay', { jobIds: [...jobIds], on });
  return (
    <fieldset className="lo-fieldset" aria-invalid={error !== undefined}>
      <legend>
        {isDayGiven
          ? `Who goes on ${dayWords(on, { weekday: true })}`
          : 'Who goes: licences as of today until a day is given'}
      </legend>
      <Answer of={whoMay}>
        {(people) =>
          people.length === 0 ? (
            <Note tone="caution">Nobody here is a technician or helper yet. Add them under People.</Note>
          ) : (
            <div className="lo-pairs">
              {people.map(({ staffId, name, problem, obstacles }) => (
                <div key={staffId} className="lo-crew">
                  <div>
                    <strong>{name}</strong>
                    <div className="lo-faint">
                      {problem === null ? 'may do the gas work' : `not the gas work: ${LICENCE[problem.why]} (`}
                      {problem === null ? null : (
                        <>
                          <RouteLink to="staff-member" params={{ staffId }} className="lo-link-inline">
                            licences
                          </RouteLink>
                          )
                        </>
                      )}
                    </div>
                    {obstacles
                      .filter(({ code }) => code !== 'licence')
                      .map((obstacle) => (
                        <div key={obstacleWords(obstacle)} style={{ color: 'var(--lo-ochre)' }}>
                          {obstacleWords(obstacle)}
                        </div>
                      ))}
                  </div>
                  <NativeSelect
                    aria-label={`${name}: part in the visit`}
                    value={crew[staffId] ?? ''}
                    data={[
                      { value: '', label: 'does not go' },
                      ...(problem === null
                        ? [
                            { value: 'lead', label: CREW_ROLE_WORDS.lead },
                            { value: 'licensed', label: CREW_ROLE_WORDS.licensed },
                          ]
                        : []),
                      { value: 'helper', label: CREW_ROLE_WORDS.helper },
                    ]}
                    onChange={(event) => onCrew({ ...crew, [staffId]: event.currentTarget.value })}
                  />
                </div>
              ))}
            </div>
          )
        }
      </Answer>
      {error === undefined ? null : (
        <p role="alert" style={{ color: 'var(--lo-ember)', margin: '0.5rem 0 0' }}>
          {error}
        </p>
      )}
    </fieldset>
  );
}
