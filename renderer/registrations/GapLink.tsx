/** Leads to the screen where something missing is given. */
import type { OutputOf } from '../../electron/contract/index.ts';
import type { PacketGap } from '../../electron/contract/registrations.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

/** Given on the appliance's own screen; the rest in its form. */
const AT_THE_APPLIANCE = new Set([
  'date-missing',
  'make-safe-open',
  'amended-outside',
  'notice-open',
  'conversion-kit-missing',
  'orifice-missing',
]);

export function GapLink({
  gap,
  registration,
}: {
  readonly gap: PacketGap;
  readonly registration: OutputOf<'registrations.get'>;
}) {
  const { applianceId, visitId, runId } = registration;
  const appliance = useOperation('appliances.get', { applianceId });
  const siteId = appliance.state === 'ready' ? appliance.value.siteId : null;
  const customerId = appliance.state === 'ready' ? appliance.value.customerId : null;
  const site =
    siteId === null ? null : (
      <RouteLink to="site" params={{ siteId }}>
        Give it at the site
      </RouteLink>
    );
  if (gap.code === 'company-licence-missing') {
    return (
      <RouteLink to="settings" params={{}}>
        Give it in the settings
      </RouteLink>
    );
  }
  // Who somebody is at the site is a role there, not a field of the customer.
  if (gap.code === 'owner-missing') return site;
  switch (gap.where) {
    case 'customer':
      return customerId === null ? null : (
        <RouteLink to="edit-customer" params={{ customerId }}>
          Give it at the customer
        </RouteLink>
      );
    case 'site':
      return gap.code === 'altitude-missing' && siteId !== null ? (
        <RouteLink to="edit-site" params={{ siteId }}>
          Give it at the site
        </RouteLink>
      ) : (
        site
      );
    case 'appliance':
      return AT_THE_APPLIANCE.has(gap.code) ? (
        <RouteLink to="appliance" params={{ applianceId }}>
          Give it at the appliance
        </RouteLink>
      ) : (
        <RouteLink to="edit-appliance" params={{ applianceId }}>
          Give it at the appliance
        </RouteLink>
      );
    case 'visit':
      return visitId === null || runId === null ? null : (
        <RouteLink to="run" params={{ visitId, runId, stepKey: gap.stepKey }}>
          Open the run
        </RouteLink>
      );
    case 'staff':
      return (
        <RouteLink to="people" params={{}}>
          Give it under People
        </RouteLink>
      );
    case 'instrument':
      return (
        <RouteLink to="instruments" params={{}}>
          Give it under Instruments
        </RouteLink>
      );
    case 'registration':
      return <span className="lo-faint">on this page</span>;
  }
}
