/** What whoever is signed in has to decide now; nothing is shown when there is nothing. */
import { Button } from '@mantine/core';
import { useMemo, useState } from 'react';
import { assertNever } from '../../domain/result.ts';
import { conflictWords } from '../board/conflictWords.ts';
import { elsewhereWords } from '../board/ofPapers.ts';
import { shortageWords } from '../board/shortageWords.ts';
import { agedWords } from '../jobs/agedWords.ts';
import { capital } from '../kit/capital.ts';
import { dayWords } from '../kit/dayWords.ts';
import { Panel } from '../kit/Panel.tsx';
import { JOB_KIND_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus, useHasRole, useSignedIn } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { addDays } from '../visits/week.ts';
import { type Decision, findDecisions } from './decisions.ts';

const DAYS = 7;
const SHOWN = 6;

export function DecisionsPanel() {
  const { today } = useAppStatus();
  const { staffId } = useSignedIn();
  const plans = useHasRole('dispatcher', 'owner');
  const board = useOperation('board.get', { from: today, to: addDays(today, DAYS - 1) });
  const [isWhole, setIsWhole] = useState(false);
  const decisions = useMemo(() => {
    if (board.state !== 'ready') return [];
    const days = Array.from({ length: DAYS }, (_, index) => addDays(today, index));
    return findDecisions(board.value, days, today, plans ? null : staffId);
  }, [board, today, plans, staffId]);
  const people = board.state === 'ready' ? board.value.technicians : [];
  const nameOf = (wanted: string) => people.find((one) => one.staffId === wanted)?.name ?? '';
  if (decisions.length === 0) return null;
  const shown = isWhole ? decisions : decisions.slice(0, SHOWN);
  return (
    <Panel
      title={`To decide (${decisions.length})`}
      action={
        decisions.length > SHOWN ? (
          <Button variant="default" onClick={() => setIsWhole((before) => !before)}>
            {isWhole ? 'Show fewer' : 'Show all'}
          </Button>
        ) : undefined
      }
    >
      <ul className="lo-gaps">
        {shown.map((decision) => (
          <DecisionLine key={keyOf(decision)} decision={decision} plans={plans} nameOf={nameOf} />
        ))}
      </ul>
    </Panel>
  );
}

function DecisionLine({
  decision,
  plans,
  nameOf,
}: {
  readonly decision: Decision;
  readonly plans: boolean;
  readonly nameOf: (staffId: string) => string;
}) {
  switch (decision.kind) {
    case 'does-not-fit':
    case 'readiness-old':
    case 'still-pencilled':
    case 'nobody-told': {
      const { visit } = decision;
      const name = `${visit.customerName}, ${dayWords(visit.plannedOn, { weekday: true })}`;
      return (
        <li>
          {plans && decision.kind === 'does-not-fit' ? (
            <RouteLink to="board" params={{ day: visit.plannedOn }}>
              {name}
            </RouteLink>
          ) : (
            <RouteLink to="visit" params={{ visitId: visit.visitId }}>
              {name}
            </RouteLink>
          )}
          <span style={{ color: decision.kind === 'does-not-fit' && decision.isGrave ? 'var(--lo-ember)' : undefined }}>
            {decision.kind === 'does-not-fit'
              ? decision.conflicts.map((conflict) => conflictWords(conflict, () => 'another visit')).join('; ')
              : decision.kind === 'readiness-old'
                ? `ask again: ${agedWords(decision.answers)}`
                : VISIT_WORDS[decision.kind]}
          </span>
        </li>
      );
    }
    case 'waiting-job': {
      const { job, daysLeft } = decision;
      return (
        <li>
          <RouteLink to="job" params={{ jobId: job.jobId }}>
            {capital(JOB_KIND_WORDS[job.kind])}: {job.customerName}, {job.city}
          </RouteLink>
          <span>{waitingWords(daysLeft)}</span>
        </li>
      );
    }
    case 'licence-ends':
      return (
        <li>
          <RouteLink to="staff-member" params={{ staffId: decision.person.staffId }}>
            {decision.person.name}
          </RouteLink>
          <span>licence ends on {dayWords(decision.on)}</span>
        </li>
      );
    case 'licence-elsewhere':
      return (
        <li>
          <RouteLink to="staff-member" params={{ staffId: decision.person.staffId }}>
            {decision.person.name}
          </RouteLink>
          <span>{elsewhereWords(decision.elsewhere)}</span>
        </li>
      );
    case 'analyser-out-of-date':
      return (
        <li>
          <RouteLink to="instruments" params={{}}>
            {decision.person.name}
          </RouteLink>
          <span>no analyser in date</span>
        </li>
      );
    case 'shared-instrument':
      return (
        <li>
          <RouteLink to="board" params={{ day: decision.shortage.on }}>
            One for several
          </RouteLink>
          <span>{shortageWords(decision.shortage, nameOf)}</span>
        </li>
      );
    default:
      return assertNever(decision);
  }
}

const VISIT_WORDS = {
  'still-pencilled': 'still pencilled in: is the site ready?',
  'nobody-told': 'the customer was not told yet',
} as const;

function waitingWords(daysLeft: number | null): string {
  if (daysLeft === null) return 'before everything else, and has no day';
  if (daysLeft < 0) return 'no day yet, and the latest day is past';
  return `no day yet, ${daysLeft === 1 ? '1 day' : `${daysLeft} days`} left`;
}

function keyOf(decision: Decision): string {
  if ('visit' in decision) return `${decision.kind} ${decision.visit.visitId}`;
  if ('job' in decision) return decision.job.jobId;
  if ('shortage' in decision) return `${decision.kind} ${decision.shortage.kind} ${decision.shortage.on}`;
  return `${decision.kind} ${decision.person.staffId}`;
}
