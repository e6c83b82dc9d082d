/** Moving an appliance to another site, of this customer or another. */
import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { SearchBox } from '../kit/SearchBox.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';

export function MoveForm({
  applianceId,
  siteId,
  onDone,
}: {
  readonly applianceId: string;
  readonly siteId: string | null;
  readonly onDone: () => void;
}) {
  const { today } = useAppStatus();
  const [query, setQuery] = useState('');
  const [chosen, setChosen] = useState<string | null>(null);
  const here = useOperation('sites.get', { siteId: siteId ?? '' }, { isWanted: siteId !== null });
  const customers = useOperation('customers.list', { query, limit: 20 }, { isWanted: query !== '' });
  const customerId = chosen ?? (here.state === 'ready' ? here.value.customerId : null);
  const customer = useOperation('customers.get', { customerId: customerId ?? '' }, { isWanted: customerId !== null });
  const sites = customer.state === 'ready' ? customer.value.sites.filter((site) => site.siteId !== siteId) : [];
  const form = useDraftForm({
    draftKey: `move.${applianceId}`,
    operation: 'appliances.move',
    initial: { siteId: '', position: '', on: dayWords(today), why: '' },
    toInput: (values, reader) => {
      if (values.siteId === '') reader.fail('siteId', 'Needed.');
      return {
        applianceId,
        siteId: values.siteId,
        position: reader.optional(values.position),
        on: reader.neededDay('on', values.on),
        why: values.why,
      };
    },
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Move it" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <p style={{ margin: 0 }}>
        What was recorded of it where it stood stays with that visit; from here on it counts here.
      </p>
      <SearchBox label="Of another customer? Search by name, phone or street" query={query} onQuery={setQuery} />
      {query === '' ? null : (
        <NativeSelect
          label="The customer"
          maw="32rem"
          value={chosen ?? ''}
          data={[
            { value: '', label: 'The one it stands with now' },
            ...(customers.state === 'ready'
              ? customers.value.rows.map((row) => ({
                  value: row.customerId,
                  label: [row.name, row.city].filter(Boolean).join(', '),
                }))
              : []),
          ]}
          onChange={(event) => {
            setChosen(event.currentTarget.value === '' ? null : event.currentTarget.value);
            form.set({ siteId: '' });
          }}
        />
      )}
      <div className="lo-fields">
        <SelectField
          form={form}
          name="siteId"
          label="To"
          isNeeded
          emptyLabel={sites.length === 0 ? 'No other site on file' : 'Choose the site'}
          options={sites.map((site) => ({
            value: site.siteId,
            label: [site.label, site.street, site.city].filter(Boolean).join(', '),
          }))}
        />
        <TextField form={form} name="position" label="Where in the building" />
        <DayField form={form} name="on" label="On" isNeeded />
        <TextField form={form} name="why" label="Why" isNeeded />
      </div>
    </DraftFormFrame>
  );
}
