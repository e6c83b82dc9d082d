/** The permits of a site: the packet asks for their number, and the dispatcher for how far they are. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import type { Permit, PermitFields } from '../../electron/contract/sites.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import type { FormReader } from '../form/FormReader.ts';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { AskReason } from '../kit/AskReason.tsx';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { WithdrawnList } from '../kit/WithdrawnList.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';

const STATE_WORDS: Record<PermitFields['state'], string> = {
  applied: 'applied for',
  issued: 'issued',
  inspected: 'inspected',
  closed: 'closed',
  refused: 'refused',
};

const STATES = Object.entries(STATE_WORDS).map(([value, label]) => ({ value, label }));

/** null: nothing is open. */
type Open = 'new' | { readonly permitId: string } | null;

export function PermitsPanel({ site, mayEdit }: { readonly site: OutputOf<'sites.get'>; readonly mayEdit: boolean }) {
  const [open, setOpen] = useState<Open>(null);
  const mayWithdraw = useHasRole('dispatcher', 'owner');
  const putBack = useAct('sites.putBackPermit');
  const { siteId, permits } = site;
  const chosen =
    open === null || open === 'new' ? undefined : permits.find(({ permitId }) => permitId === open.permitId);
  const close = () => setOpen(null);
  return (
    <Panel
      title="Permits"
      action={
        mayEdit && open !== 'new' ? (
          <Button variant="default" onClick={() => setOpen('new')}>
            Add a permit
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {open === 'new' ? <NewPermitForm siteId={siteId} onDone={close} /> : null}
        {chosen === undefined ? null : (
          <PermitChange key={chosen.permitId} permit={chosen} mayWithdraw={mayWithdraw} onDone={close} />
        )}
        {permits.length === 0 ? (
          <EmptyState title="No permit on file">
            Where the authority asks for one: its number, who issued it and how far it is. The packet prints it.
          </EmptyState>
        ) : (
          <PlainTable
            caption="Permits"
            rows={permits}
            keyOf={({ permitId }) => permitId}
            columns={[
              { label: 'Number', cell: ({ number }) => number },
              { label: 'Issued by', cell: ({ issuer }) => issuer },
              { label: 'State', cell: ({ state }) => STATE_WORDS[state] },
              { label: 'On', cell: ({ on }) => (on === null ? '' : <DateText day={on} />) },
              ...(mayEdit
                ? [
                    {
                      label: 'Change',
                      cell: ({ permitId, number }: Permit) => (
                        <Button variant="default" onClick={() => setOpen({ permitId })}>
                          Change<span className="lo-hidden"> permit {number}</span>
                        </Button>
                      ),
                    },
                  ]
                : []),
            ]}
          />
        )}
        <WithdrawnList
          rows={site.withdrawnPermits.map(({ permitId, number, issuer, endReason }) => ({
            id: permitId,
            name: `${number}, ${issuer}`,
            why: endReason,
          }))}
          {...(mayWithdraw ? { onPutBack: (permitId: string) => void putBack.act({ permitId }) } : {})}
        />
        <ErrorText error={putBack.error} />
      </Stack>
    </Panel>
  );
}

function NewPermitForm({ siteId, onDone }: { readonly siteId: string; readonly onDone: () => void }) {
  const form = useDraftForm({
    draftKey: `permit.${siteId}`,
    operation: 'sites.addPermit',
    inputRoot: 'permit',
    initial: EMPTY,
    toInput: (values, reader) => ({ siteId, permit: permitFromForm(values, reader) }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <PermitFieldset form={form} />
    </DraftFormFrame>
  );
}

function PermitChange({
  permit,
  mayWithdraw,
  onDone,
}: {
  readonly permit: Permit;
  readonly mayWithdraw: boolean;
  readonly onDone: () => void;
}) {
  const { permitId } = permit;
  const withdraw = useAct('sites.withdrawPermit');
  const form = useDraftForm({
    draftKey: `permit-change.${permitId}`,
    operation: 'sites.updatePermit',
    inputRoot: 'permit',
    initial: {
      number: permit.number,
      issuer: permit.issuer,
      state: permit.state as string,
      on: permit.on === null ? '' : dayWords(permit.on),
    },
    toInput: (values, reader) => ({ permitId, permit: permitFromForm(values, reader) }),
    onDone,
  });
  return (
    <Panel title={`Permit ${permit.number}`} level={3}>
      <Stack>
        <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
          <PermitFieldset form={form} />
        </DraftFormFrame>
        {mayWithdraw ? (
          <AskReason
            label="Withdraw it"
            confirmLabel="Withdraw it"
            isBusy={withdraw.isBusy}
            onConfirm={async (why) => {
              const { ok } = await withdraw.act({ permitId, why });
              if (ok) onDone();
              return ok;
            }}
          >
            For one that never was: of another site, or typed twice. No packet prints it, and it can be put back.
          </AskReason>
        ) : null}
        <ErrorText error={withdraw.error} />
      </Stack>
    </Panel>
  );
}

type PermitForm = { readonly number: string; readonly issuer: string; readonly state: string; readonly on: string };

const EMPTY: PermitForm = { number: '', issuer: '', state: 'issued', on: '' };

function permitFromForm(values: PermitForm, reader: FormReader): PermitFields {
  return {
    number: values.number,
    issuer: values.issuer,
    state: values.state as PermitFields['state'],
    on: reader.day('on', values.on),
  };
}

function PermitFieldset({ form }: { readonly form: DraftForm<PermitForm> }) {
  return (
    <div className="lo-fields">
      <TextField form={form} name="number" label="Number" isNeeded />
      <TextField form={form} name="issuer" label="Issued by" isNeeded />
      <SelectField form={form} name="state" label="State" options={STATES} />
      <DayField form={form} name="on" label="On" description="The day of that state; may stay empty." />
    </div>
  );
}
