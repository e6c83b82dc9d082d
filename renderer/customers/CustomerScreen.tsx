/** One customer: how to reach them, their sites and appliances, what they agreed to. */
import { Button, Group } from '@mantine/core';
import type { OutputOf } from '../../electron/contract/index.ts';
import { ApplianceTable } from '../appliances/ApplianceTable.tsx';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Facts } from '../kit/Facts.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { LANGUAGE_OPTIONS } from '../kit/places.ts';
import { Screen } from '../kit/Screen.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { PersonDataPanel } from '../persons/PersonDataPanel.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { addressWords } from './addressWords.ts';
import { ConsentPanel } from './ConsentPanel.tsx';

export function CustomerScreen({ customerId }: { readonly customerId: string }) {
  const found = useOperation('customers.get', { customerId });
  const mayEdit = useHasRole('dispatcher', 'owner', 'technician');
  const title = found.state === 'ready' ? found.value.party.name : 'Customer';
  return (
    <Screen
      title={title}
      crumbs={
        <RouteLink to="customers" params={{}}>
          Customers
        </RouteLink>
      }
      action={
        mayEdit ? (
          <Button variant="default" onClick={() => goTo('edit-customer', { customerId })}>
            Edit
          </Button>
        ) : undefined
      }
    >
      <Answer of={found}>{(customer) => <Customer customer={customer} mayEdit={mayEdit} />}</Answer>
    </Screen>
  );
}

function Customer({ customer, mayEdit }: { readonly customer: OutputOf<'customers.get'>; readonly mayEdit: boolean }) {
  const { customerId, party, sites, appliances } = customer;
  const newSite = mayEdit ? (
    <Button variant={sites.length === 0 ? 'filled' : 'default'} onClick={() => goTo('new-site', { customerId })}>
      New site
    </Button>
  ) : undefined;
  return (
    <>
      {mayEdit ? <Shortcut keys="n" label="New site" onPress={() => goTo('new-site', { customerId })} /> : null}
      <Panel title="Sites" action={sites.length === 0 ? undefined : newSite}>
        {sites.length === 0 ? (
          <EmptyState title="No site yet" action={newSite}>
            A site is an address with its heating system and gas. Appliances stand at a site.
          </EmptyState>
        ) : (
          <PlainTable
            caption="Sites"
            rows={sites}
            keyOf={(site) => site.siteId}
            columns={[
              {
                label: 'Address',
                cell: (site) => (
                  <RouteLink to="site" params={{ siteId: site.siteId }}>
                    {site.street}, {site.city}
                  </RouteLink>
                ),
              },
              { label: 'Called', cell: (site) => site.label ?? '' },
              { label: 'Appliances', cell: (site) => site.applianceCount, isNumber: true },
              { label: 'Open', cell: (site) => <MakeSafeCount count={site.openMakeSafes} /> },
            ]}
          />
        )}
      </Panel>
      {appliances.length > 0 ? (
        <Panel title="Appliances">
          <ApplianceTable appliances={appliances} />
        </Panel>
      ) : null}
      <div className="lo-columns">
        <Panel title="How to reach them">
          <Facts
            facts={[
              ...(party.kind === 'firm' ? ([['Contact', party.contactName]] as const) : []),
              [
                'Phone',
                party.phoneTyped === null ? null : (
                  <Phone key="phone" typed={party.phoneTyped} e164={party.phoneE164} />
                ),
              ],
              ['E-mail', party.email],
              ['Letters to', addressWords(party)],
              ['Language', LANGUAGE_OPTIONS.find(({ value }) => value === party.language)?.label ?? null],
              ['Customer since', <DateText key="since" day={customer.since} />],
              ...(party.note === null ? [] : ([['Note', party.note]] as const)),
            ]}
          />
        </Panel>
        <ConsentPanel partyId={party.partyId} consents={customer.consents} />
      </div>
      <PersonDataPanel partyId={party.partyId} />
    </>
  );
}

function Phone({ typed, e164 }: { readonly typed: string; readonly e164: string | null }) {
  return (
    <Group gap="xs">
      {typed}
      {e164 === null ? <span style={{ color: 'var(--lo-ochre)' }}>not a complete number</span> : null}
    </Group>
  );
}
