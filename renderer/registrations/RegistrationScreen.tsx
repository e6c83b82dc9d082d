/** One registration: its last day and how it came about, who registers, what is missing, the packet, the maker's answer. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { HistoryPanel } from '../kit/HistoryPanel.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { DecidePanel } from './DecidePanel.tsx';
import { daysLeftWords, deadlineWords, submittedInTimeWords, urgencyOf } from './deadlineWords.ts';
import { PacketPanel } from './PacketPanel.tsx';
import { STATE_WORDS } from './registrationWords.ts';
import { SubmitPanel } from './SubmitPanel.tsx';

export function RegistrationScreen({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('registrations.get', { applianceId });
  const value = found.state === 'ready' ? found.value : null;
  const isNoneYet = found.state === 'failed' && found.error.code === 'not-found';
  return (
    <Screen
      title={value === null ? 'Registration' : `Registration: ${value.maker} ${value.model}, ${value.serial}`}
      crumbs={
        <>
          <RouteLink to="registrations" params={{}}>
            Registrations
          </RouteLink>
          <RouteLink to="appliance" params={{ applianceId }}>
            Appliance
          </RouteLink>
        </>
      }
    >
      {isNoneYet ? (
        <>
          <Panel title="Not begun">
            <EmptyState title="No registration yet">
              It begins with the startup’s record. Who registers can be settled now.
            </EmptyState>
          </Panel>
          <DecidePanel
            applianceId={applianceId}
            by="office"
            ownerConsentOn={null}
            consentOnFileOn={null}
            followUpOn={null}
          />
        </>
      ) : (
        <Answer of={found}>{(registration) => <Registration registration={registration} />}</Answer>
      )}
    </Screen>
  );
}

function Registration({ registration }: { readonly registration: OutputOf<'registrations.get'> }) {
  const { deadline, state } = registration;
  return (
    <>
      <p style={{ margin: 0 }}>
        {[registration.customerName, registration.street, registration.city].filter(Boolean).join(', ')}
      </p>
      {state === 'confirmed' ? (
        <Note tone="fir" title="Confirmed by the maker">
          {registration.number === null ? null : `Number ${registration.number}.`}
        </Note>
      ) : registration.submittedOn !== null ? (
        <Note tone="plain" title={capital(STATE_WORDS[state])}>
          Submitted on {dayWords(registration.submittedOn)}
          {deadline === null ? '.' : `, ${submittedInTimeWords(registration.submittedOn, deadline.dueOn)}.`} Ask the
          maker when no confirmation comes.
        </Note>
      ) : deadline === null ? (
        <Note tone="caution" title={STATE_WORDS[state]}>
          No date is known from which the maker’s window could count. Set “installed” or “started up” on the appliance.
        </Note>
      ) : (
        <Note
          tone={TONES[urgencyOf(deadline.daysLeft)]}
          title={`${capital(daysLeftWords(deadline.daysLeft))}, ${STATE_WORDS[state]}`}
        >
          {deadlineWords(deadline)}
          {deadline.daysLeft < 0 ? ' Submit it anyway and keep the proof.' : ''}
        </Note>
      )}
      <PacketPanel registration={registration} />
      <div className="lo-columns">
        <DecidePanel
          key={`${registration.by} ${registration.ownerConsentOn} ${registration.followUpOn}`}
          applianceId={registration.applianceId}
          by={registration.by}
          ownerConsentOn={registration.ownerConsentOn}
          consentOnFileOn={registration.consentOnFileOn}
          followUpOn={registration.followUpOn}
        />
        <SubmitPanel registration={registration} />
      </div>
      {registration.registrationId === null ? null : (
        <HistoryPanel entity="registrations" entityId={registration.registrationId} />
      )}
    </>
  );
}

const TONES = { late: 'ember', pressing: 'ember', soon: 'caution', calm: 'plain' } as const;
