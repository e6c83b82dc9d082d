/** That agreements about an appliance go on: they were made with a person, and do not pass or end by themselves. */
import { dayWords } from '../kit/dayWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function RunningAgreements({ applianceId, serial }: { readonly applianceId: string; readonly serial: string }) {
  const { today } = useAppStatus();
  const found = useOperation('agreements.list', { applianceId });
  if (found.state !== 'ready') return null;
  return found.value.agreements
    .filter(({ toOn }) => toOn === null || toOn >= today)
    .map(({ agreementId, partyName, number, toOn }) => (
      <p key={agreementId} style={{ margin: 0 }}>
        The service agreement {number} with {partyName} about {serial} goes on until{' '}
        {toOn === null ? 'it is ended' : `${dayWords(toOn)} or until it is ended`}{' '}
        <RouteLink to="appliance" params={{ applianceId }} className="lo-link-inline">
          at the appliance
        </RouteLink>
        .
      </p>
    ));
}
