/** For the owner alone: records of the last two weeks that had better be looked at, each with the way to its visits. */
import { useState } from 'react';
import type { OddRecord } from '../../domain/judgement/audit/oddRecords.ts';
import { isQuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import { assertNever } from '../../domain/result.ts';
import type { AuditedVisit } from '../../electron/contract/oversight.ts';
import { InstantText } from '../kit/DateText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { QuantityText } from '../kit/QuantityText.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { addDays } from '../visits/week.ts';

const DAYS_BACK = 14;
const VISITS_SHOWN = 3;

export function OddRecordsPanel() {
  const { today } = useAppStatus();
  const found = useOperation('oversight.list', { from: addDays(today, -DAYS_BACK), to: addDays(today, 1) });
  if (found.state !== 'ready' || found.value.odd.length === 0) return null;
  const { odd, visits, leftOut } = found.value;
  const byRun = new Map(visits.map((visit) => [visit.runId, visit]));
  return (
    <Panel title={`Records to look at: ${odd.length}`}>
      <p className="lo-faint">
        Of the last {DAYS_BACK} days, shown to the owner only. Each is a question to ask, not an answer.
        {leftOut === 0 ? '' : ` ${leftOut} earlier visits were not looked at.`}
      </p>
      <ul className="lo-gaps">
        {odd.map((one) => (
          <OddLine key={JSON.stringify(one)} odd={one} byRun={byRun} />
        ))}
      </ul>
    </Panel>
  );
}

function OddLine({
  odd,
  byRun,
}: {
  readonly odd: OddRecord & { readonly name: string | null };
  readonly byRun: ReadonlyMap<string, AuditedVisit>;
}) {
  const [isWhole, setIsWhole] = useState(false);
  const visits = odd.runIds.flatMap((runId) => byRun.get(runId) ?? []);
  const shown = isWhole ? visits : visits.slice(0, VISITS_SHOWN);
  return (
    <li>
      <b>{odd.name ?? 'Several, or nobody named'}</b> <ProblemWords problem={odd.problem} units={odd.runIds.length} />{' '}
      {shown.map(({ runId, visitId, customerName, street, startedAt }) => (
        <span key={runId}>
          <RouteLink to="visit" params={{ visitId }}>
            {customerName}, {street}
          </RouteLink>{' '}
          <span className="lo-faint">
            <InstantText at={startedAt} />
          </span>{' '}
        </span>
      ))}
      {visits.length > shown.length ? (
        <button type="button" className="lo-link" onClick={() => setIsWhole(true)}>
          and {visits.length - shown.length} more
        </button>
      ) : null}
    </li>
  );
}

function ProblemWords({ problem, units }: { readonly problem: OddRecord['problem']; readonly units: number }) {
  switch (problem.code) {
    case 'alike':
      return `${units} units with the same ${problem.same} flue-gas readings, to the last digit`;
    case 'no-spread': {
      const [quantity = '', point] = problem.key.split('@');
      if (!isQuantityKey(quantity)) return `${problem.key} the same in ${units} units`;
      return (
        <>
          {quantitySpec(quantity).label}
          {point === undefined ? '' : `, ${point}`}: <QuantityText quantity={quantity} value={problem.value} /> in each
          of {units} units
        </>
      );
    }
    case 'on-target':
      return `${problem.same} readings exactly in the middle of the sheet’s bands`;
    case 'shorter-than-its-waits':
      return `read in ${minutes(problem.tookS)}, with waits of ${minutes(problem.waitsS)} in it`;
    case 'out-of-order':
      return `a reading older than the moment the burner reached its ${problem.earlier}`;
    case 'photo-from-another-time':
      return 'a photo taken at another time than the visit';
    case 'photos-missing':
      return problem.count === 1 ? 'one photo missing' : `${problem.count} photos missing`;
    case 'same-photo':
      return `${problem.photos === 1 ? 'one picture' : `${problem.photos} pictures`} put in for ${problem.places} things`;
    default:
      return assertNever(problem);
  }
}

function minutes(seconds: number): string {
  return `${Math.round(seconds / 60)} min`;
}
