/** A new house whose builder stands as its owner: the registration asks for whoever will live there, and counts from the transfer of title. */
import { Button, Group } from '@mantine/core';
import { ownerIsBuilder } from '../../domain/judgement/mistakes/ownerIsBuilder.ts';
import type { PartyRole } from '../../domain/vocabulary/people.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Note } from '../kit/Note.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function OwnerQuestion({
  site,
  onAdd,
}: {
  readonly site: OutputOf<'sites.get'>;
  /** null: only said, to somebody who may not change it. */
  readonly onAdd: ((role: PartyRole) => void) | null;
}) {
  const [appliance] = site.appliances;
  const customer = useOperation('customers.get', { customerId: site.customerId });
  const dates = useOperation(
    'appliances.get',
    { applianceId: appliance?.applianceId ?? '' },
    { isWanted: appliance !== undefined },
  );
  // What is not known yet is not asked about: the question would come and go.
  if (customer.state !== 'ready' || (appliance !== undefined && dates.state !== 'ready')) return null;
  const has = (role: PartyRole): string | null =>
    site.roles.find((one) => one.role === role && one.toOn === null)?.partyId ?? null;
  const question = ownerIsBuilder({
    buildingType: site.site.buildingKind,
    // Whoever is the customer owns it, unless somebody else is named.
    ownerId: has('owner') ?? customer.value.party.partyId,
    builderId: has('builder'),
    occupantId: has('occupant'),
    titleTransferOn:
      dates.state === 'ready' ? (dates.value.dates.find(({ kind }) => kind === 'title-transfer')?.on ?? null) : null,
  });
  if (question === null) return null;
  const asks = (what: (typeof question.askFor)[number]): boolean => question.askFor.includes(what);
  return (
    <Note tone="caution" title="The builder stands as the owner of a new house">
      {asks('owner') ? 'Title has passed: who owns it now? ' : null}
      {asks('occupant') ? 'Who will live there? Letters and the handover go to them. ' : null}
      {asks('title-transfer') ? 'When does title pass? Some makers count the registration from that day. ' : null}
      <Group gap="sm" mt="xs">
        {onAdd !== null && asks('owner') ? (
          <Button variant="default" onClick={() => onAdd('owner')}>
            Name the owner
          </Button>
        ) : null}
        {onAdd !== null && asks('occupant') ? (
          <Button variant="default" onClick={() => onAdd('occupant')}>
            Name the occupant
          </Button>
        ) : null}
        {asks('title-transfer') && appliance !== undefined ? (
          <RouteLink to="appliance" params={{ applianceId: appliance.applianceId }} className="lo-link-inline">
            Set the day of the transfer
          </RouteLink>
        ) : null}
      </Group>
    </Note>
  );
}
