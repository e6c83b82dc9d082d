/** A house changed hands: its technical history stays with it, the people change. */
import { NativeSelect, Stack } from '@mantine/core';
import { useState } from 'react';
import { RunningAgreements } from '../agreements/RunningAgreements.tsx';
import { PartyFieldset } from '../customers/PartyFieldset.tsx';
import { emptyParty, type PartyForm, partyFromForm } from '../customers/partyForm.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { SearchBox } from '../kit/SearchBox.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { replaceWith } from '../route.ts';

export function TransferScreen({ siteId }: { readonly siteId: string }) {
  const site = useOperation('sites.get', { siteId });
  const value = site.state === 'ready' ? site.value : null;
  return (
    <Screen
      title={value === null ? 'New owner' : `New owner of ${value.site.street}, ${value.site.city}`}
      crumbs={
        <RouteLink to="site" params={{ siteId }}>
          The site
        </RouteLink>
      }
    >
      <Answer of={site}>
        {({ customerName, appliances }) => (
          <Panel title="Who has it now">
            <Stack gap="md">
              <p style={{ margin: 0 }}>
                Appliances, visits, readings and documents stay with the house. {customerName} stays on file as a former
                owner by name; phone, e-mail and address are not shown with the house any more. Tell the maker too: some
                terms pass to a new owner only within a time of their own.
              </p>
              {appliances.map(({ applianceId, serial }) => (
                <RunningAgreements key={applianceId} applianceId={applianceId} serial={serial} />
              ))}
              <TransferForm siteId={siteId} />
            </Stack>
          </Panel>
        )}
      </Answer>
    </Screen>
  );
}

type TransferValues = PartyForm & { readonly on: string; readonly knownId: string };

function TransferForm({ siteId }: { readonly siteId: string }) {
  const { company, today } = useAppStatus();
  const [query, setQuery] = useState('');
  const customers = useOperation('customers.list', { query, limit: 20 }, { isWanted: query !== '' });
  const found = customers.state === 'ready' ? customers.value.rows : [];
  const initial: TransferValues = { ...emptyParty(company?.country ?? ''), on: dayWords(today), knownId: '' };
  const form = useDraftForm({
    draftKey: `transfer.${siteId}`,
    operation: 'sites.transfer',
    inputRoot: 'to',
    initial,
    toInput: (values, reader) => ({
      siteId,
      on: reader.neededDay('on', values.on),
      to: values.knownId === '' ? partyFromForm(values, reader) : { customerId: values.knownId },
    }),
    onDone: ({ customerId }) => replaceWith('customer', { customerId }),
  });
  return (
    <DraftFormFrame form={form} submitLabel="Hand it over" failure={<ErrorText error={form.error} />}>
      <DayField form={form} name="on" label="Since" isNeeded />
      <SearchBox label="Somebody on file? Search by name, phone or street" query={query} onQuery={setQuery} />
      <NativeSelect
        label="The new owner"
        maw="32rem"
        value={form.values.knownId}
        data={[
          { value: '', label: 'Somebody new, as written below' },
          ...found.map(({ customerId, name, city }) => ({
            value: customerId,
            label: [name, city].filter(Boolean).join(', '),
          })),
        ]}
        onChange={(event) => form.set({ knownId: event.currentTarget.value })}
      />
      {form.values.knownId === '' ? <PartyFieldset form={form} /> : null}
    </DraftFormFrame>
  );
}
