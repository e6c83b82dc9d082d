/** Registrations whose time runs out: from half of it on, those with the fewest days left first; and those to follow up. */
import { derivationSentence } from '../../domain/coverage/derivation.ts';
import type { DeadlineRow } from '../../electron/contract/dues.ts';
import { ALARM_TONES, ALARM_WORDS, STAGE_WORDS } from '../deadlines/stageWords.ts';
import { Answer } from '../kit/Answer.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAskAgain } from '../operations/useAskAgain.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { daysLeftWords } from '../registrations/deadlineWords.ts';
import { RegistrationTable } from '../registrations/RegistrationsScreen.tsx';

const SHOWN = 10;

export function PressingRegistrationsPanel() {
  const { today } = useAppStatus();
  const pressing = useOperation('deadlines.list', { show: 'pressing', limit: SHOWN });
  useAskAgain(pressing, pressing.state === 'ready' && pressing.value.rows.some(isUncounted));
  const followUps = useOperation('registrations.list', { openOnly: true, followUpBy: today, limit: SHOWN });
  useAskAgain(followUps, followUps.state === 'ready' && followUps.value.rows.some(isUncounted));
  return (
    <Panel
      title="Registrations that press"
      action={
        <RouteLink to="deadlines" params={{}}>
          All deadlines
        </RouteLink>
      }
    >
      <Answer of={pressing}>
        {({ rows, next }) =>
          rows.length === 0 ? (
            <EmptyState title="Nothing presses">
              A registration comes here when half of its time is over, and two weeks before its last day at the latest.
            </EmptyState>
          ) : (
            <>
              <PressingTable rows={rows} />
              {next === null ? null : (
                <p className="lo-faint" style={{ margin: 0 }}>
                  More of them are among the deadlines.
                </p>
              )}
            </>
          )
        }
      </Answer>
      <Answer of={followUps}>
        {({ rows, next }) =>
          rows.length === 0 ? null : (
            <>
              <h3>To follow up</h3>
              <RegistrationTable rows={rows} />
              {next === null ? null : (
                <p className="lo-faint" style={{ margin: 0 }}>
                  More of them are among the registrations.
                </p>
              )}
            </>
          )
        }
      </Answer>
    </Panel>
  );
}

/** Of those shown here: the others need not be counted for it. */
function isUncounted({ missingCount }: { readonly missingCount: number | null }): boolean {
  return missingCount === null;
}

function PressingTable({ rows }: { readonly rows: readonly DeadlineRow[] }) {
  return (
    <PlainTable
      caption="Registrations that press"
      rows={rows}
      keyOf={({ applianceId }) => applianceId}
      columns={[
        {
          label: 'Appliance',
          cell: ({ applianceId, maker, model, serial }) => (
            <RouteLink to="registration" params={{ applianceId }}>
              {maker} {model}, {serial}
            </RouteLink>
          ),
        },
        {
          label: 'Last day',
          cell: ({ alarm, daysLeft, derivation }) => (
            <>
              <span className="lo-verdict" data-tone={ALARM_TONES[alarm]}>
                {daysLeftWords(daysLeft)}
              </span>
              {ALARM_WORDS[alarm] === '' ? null : <div>{ALARM_WORDS[alarm]}</div>}
              <div className="lo-faint">{derivationSentence(derivation)}</div>
            </>
          ),
        },
        {
          label: 'State',
          cell: ({ stage, missingCount }) => (
            <>
              {STAGE_WORDS[stage]}
              {missingCount === null || missingCount === 0 ? null : (
                <div>{missingCount === 1 ? '1 thing missing' : `${missingCount} things missing`}</div>
              )}
            </>
          ),
        },
        { label: 'Technician', cell: ({ technicianName }) => technicianName ?? '' },
        {
          label: 'Customer',
          cell: ({ customerName, street, city }) => (
            <>
              {customerName}
              <div className="lo-faint">{[street, city].filter(Boolean).join(', ')}</div>
            </>
          ),
        },
      ]}
    />
  );
}
