/** A new customer, or the particulars of one on file. */
import { Button, Group } from '@mantine/core';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo, replaceWith } from '../route.ts';
import { PartyFieldset } from './PartyFieldset.tsx';
import { emptyParty, partyFromForm, partyToForm, partyTyped } from './partyForm.ts';

/** `typed`: what somebody was searched by and not found. */
export function NewCustomerScreen({ typed }: { readonly typed: string | null }) {
  const { company } = useAppStatus();
  const form = useDraftForm({
    // Another name is another person: what was left half typed about somebody else stays theirs.
    draftKey: typed === null ? 'new-customer' : `new-customer.${typed}`,
    operation: 'customers.create',
    inputRoot: 'party',
    initial: { ...emptyParty(company?.country ?? ''), ...partyTyped(typed ?? '') },
    toInput: (values, reader) => ({ party: partyFromForm(values, reader), note: null }),
    // Nobody wants to come back to an empty form that would add the same person again.
    onDone: ({ customerId }) => replaceWith('customer', { customerId }),
  });
  return (
    <Screen
      title="New customer"
      crumbs={
        <RouteLink to="customers" params={{}}>
          Customers
        </RouteLink>
      }
    >
      <Panel title="Who they are">
        <DraftFormFrame
          form={form}
          submitLabel="Add customer"
          failure={
            form.error?.code === 'looks-like' ? (
              <LooksLike
                others={form.error.data.others}
                isBusy={form.isBusy}
                onNew={() => void form.sendAnyway((input) => ({ ...input, isKnownNew: true }))}
              />
            ) : (
              <ErrorText error={form.error} />
            )
          }
        >
          <PartyFieldset form={form} leadsIn />
        </DraftFormFrame>
      </Panel>
    </Screen>
  );
}

function LooksLike({
  others,
  isBusy,
  onNew,
}: {
  readonly others: readonly { readonly customerId: string; readonly name: string; readonly why: string }[];
  readonly isBusy: boolean;
  readonly onNew: () => void;
}) {
  return (
    <Note tone="caution" title="Somebody much like this is on file" isSpoken>
      <ul>
        {others.map(({ customerId, name, why }) => (
          <li key={customerId}>
            <RouteLink to="customer" params={{ customerId }}>
              {name}
            </RouteLink>{' '}
            <span className="lo-faint">({why})</span>
          </li>
        ))}
      </ul>
      <Group>
        <Button variant="default" loading={isBusy} onClick={onNew}>
          It is somebody new
        </Button>
      </Group>
    </Note>
  );
}

export function EditCustomerScreen({ customerId }: { readonly customerId: string }) {
  const found = useOperation('customers.get', { customerId });
  return (
    <Screen
      title="Edit customer"
      crumbs={
        <RouteLink to="customer" params={{ customerId }}>
          Back to the customer
        </RouteLink>
      }
    >
      <Answer of={found}>{(customer) => <EditForm customer={customer} />}</Answer>
    </Screen>
  );
}

function EditForm({ customer }: { readonly customer: OutputOf<'customers.get'> }) {
  const { customerId, party } = customer;
  const form = useDraftForm({
    draftKey: `customer.${customerId}`,
    operation: 'customers.update',
    inputRoot: 'party',
    initial: partyToForm(party),
    toInput: (values, reader) => ({ customerId, party: partyFromForm(values, reader), note: customer.note }),
    onDone: () => goTo('customer', { customerId }),
  });
  return (
    <Panel title="Who they are">
      <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
        <PartyFieldset form={form} leadsIn />
      </DraftFormFrame>
    </Panel>
  );
}
