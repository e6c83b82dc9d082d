/** The permits of a site: the packet asks for their number, and the dispatcher for how far they are. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import type { PermitFields } from '../../electron/contract/sites.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';

const STATE_WORDS: Record<PermitFields['state'], string> = {
  applied: 'applied for',
  issued: 'issued',
  inspected: 'inspected',
  closed: 'closed',
  refused: 'refused',
};

const STATES = Object.entries(STATE_WORDS).map(([value, label]) => ({ value, label }));

export function PermitsPanel({
  siteId,
  permits,
  mayEdit,
}: {
  readonly siteId: string;
  readonly permits: readonly PermitFields[];
  readonly mayEdit: boolean;
}) {
  const [isAdding, setIsAdding] = useState(false);
  return (
    <Panel
      title="Permits"
      action={
        mayEdit && !isAdding ? (
          <Button variant="default" onClick={() => setIsAdding(true)}>
            Add a permit
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {isAdding ? <PermitForm siteId={siteId} onDone={() => setIsAdding(false)} /> : null}
        {permits.length === 0 ? (
          <EmptyState title="No permit on file">
            Where the authority asks for one: its number, who issued it and how far it is. The packet prints it.
          </EmptyState>
        ) : (
          <PlainTable
            caption="Permits"
            rows={permits}
            keyOf={({ number, issuer, state }) => `${number} ${issuer} ${state}`}
            columns={[
              { label: 'Number', cell: ({ number }) => number },
              { label: 'Issued by', cell: ({ issuer }) => issuer },
              { label: 'State', cell: ({ state }) => STATE_WORDS[state] },
              { label: 'On', cell: ({ on }) => (on === null ? '' : <DateText day={on} />) },
            ]}
          />
        )}
      </Stack>
    </Panel>
  );
}

function PermitForm({ siteId, onDone }: { readonly siteId: string; readonly onDone: () => void }) {
  const form = useDraftForm({
    draftKey: `permit.${siteId}`,
    operation: 'sites.addPermit',
    inputRoot: 'permit',
    initial: { number: '', issuer: '', state: 'issued' as string, on: '' },
    toInput: (values, reader) => ({
      siteId,
      permit: {
        number: values.number,
        issuer: values.issuer,
        state: values.state as PermitFields['state'],
        on: reader.day('on', values.on),
      },
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <TextField form={form} name="number" label="Number" isNeeded />
        <TextField form={form} name="issuer" label="Issued by" isNeeded />
        <SelectField form={form} name="state" label="State" options={STATES} />
        <DayField form={form} name="on" label="On" description="The day of that state; may stay empty." />
      </div>
    </DraftFormFrame>
  );
}
