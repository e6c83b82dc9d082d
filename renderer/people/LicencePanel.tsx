/** Licences of one person: what they allow, where, until when. They are judged on the day of a visit, not today. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import type { Licence, StaffMember } from '../../electron/contract/people.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { AmountText } from '../kit/AmountText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { FUEL_WORDS } from '../kit/tradeWords.ts';
import { WithdrawnList } from '../kit/WithdrawnList.tsx';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { EndOrWithdraw } from './EndOrWithdraw.tsx';
import { InDate } from './InDate.tsx';
import { LicenceFieldset } from './LicenceFieldset.tsx';
import { emptyLicence, licenceFromForm, licenceToForm } from './licenceForm.ts';

/** null: nothing is open. */
type Open = 'new' | { readonly licenceId: string } | null;

export function LicencePanel({ person, mayEdit }: { readonly person: StaffMember; readonly mayEdit: boolean }) {
  const [open, setOpen] = useState<Open>(null);
  const putBack = useAct('staff.putBackLicence');
  const chosen =
    open === null || open === 'new' ? undefined : person.licences.find(({ licenceId }) => licenceId === open.licenceId);
  const close = () => setOpen(null);
  return (
    <Panel
      title="Licences"
      action={
        mayEdit && open !== 'new' ? (
          <Button variant="default" onClick={() => setOpen('new')}>
            Add a licence
          </Button>
        ) : undefined
      }
    >
      {mayEdit ? <Shortcut keys="l" label="Add a licence" onPress={() => setOpen('new')} /> : null}
      <Stack>
        {open === 'new' ? <NewLicenceForm staffId={person.staffId} onDone={close} /> : null}
        {chosen === undefined ? null : <LicenceChange key={chosen.licenceId} licence={chosen} onDone={close} />}
        {person.licences.length === 0 ? (
          <EmptyState title="No licence on file">
            Without one that covers fuel, size and day, nobody can be sent for gas work or sign its results.
          </EmptyState>
        ) : (
          <PlainTable
            caption="Licences"
            rows={person.licences}
            keyOf={(licence) => licence.licenceId}
            columns={[
              { label: 'Class', cell: ({ licenceClass }) => licenceClass },
              { label: 'Number', cell: ({ number, issuer }) => `${number}, ${issuer}` },
              { label: 'Place', cell: ({ place }) => place },
              { label: 'Fuel', cell: ({ fuel }) => (fuel === null ? 'any' : FUEL_WORDS[fuel]) },
              {
                label: 'Up to',
                cell: ({ maxKw }) =>
                  maxKw === null ? 'any size' : <AmountText dimension="power" own={maxKw} decimals={0} />,
                isNumber: true,
              },
              {
                label: 'Dates',
                cell: ({ validFrom, validTo, endReason }) => (
                  <>
                    <InDate from={validFrom} to={validTo} />
                    {endReason === null ? null : <div className="lo-faint">ended: {endReason}</div>}
                  </>
                ),
              },
              ...(mayEdit
                ? [
                    {
                      label: 'Change',
                      cell: ({ licenceId, number }: Licence) => (
                        <Button variant="default" onClick={() => setOpen({ licenceId })}>
                          Change<span className="lo-hidden"> licence {number}</span>
                        </Button>
                      ),
                    },
                  ]
                : []),
            ]}
          />
        )}
        <WithdrawnList
          rows={person.withdrawn.licences.map(({ licenceId, licenceClass, number, endReason }) => ({
            id: licenceId,
            name: `${licenceClass}, ${number}`,
            why: endReason,
          }))}
          {...(mayEdit ? { onPutBack: (licenceId) => void putBack.act({ licenceId }) } : {})}
        />
        <ErrorText error={putBack.error} />
      </Stack>
    </Panel>
  );
}

function NewLicenceForm({ staffId, onDone }: { readonly staffId: string; readonly onDone: () => void }) {
  const unitSystem = useUnitSystem();
  const form = useDraftForm({
    draftKey: `licence.${staffId}`,
    operation: 'staff.addLicence',
    inputRoot: 'licence',
    initial: emptyLicence(unitSystem),
    toInput: (values, reader) => ({ staffId, licence: licenceFromForm(values, reader) }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <LicenceFieldset form={form} />
    </DraftFormFrame>
  );
}

function LicenceChange({ licence, onDone }: { readonly licence: Licence; readonly onDone: () => void }) {
  const unitSystem = useUnitSystem();
  const { licenceId } = licence;
  const end = useAct('staff.endLicence');
  const withdraw = useAct('staff.withdrawLicence');
  const form = useDraftForm({
    draftKey: `licence-change.${licenceId}`,
    operation: 'staff.correctLicence',
    inputRoot: 'licence',
    initial: licenceToForm(licence, unitSystem),
    toInput: (values, reader) => ({ licenceId, licence: licenceFromForm(values, reader) }),
    onDone,
  });
  const finish = ({ ok }: { readonly ok: boolean }) => {
    if (ok) onDone();
    return ok;
  };
  return (
    <Panel title={`Licence ${licence.number}`} level={3}>
      <Stack>
        <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
          <LicenceFieldset form={form} />
        </DraftFormFrame>
        <EndOrWithdraw
          ending="Suspended, revoked or given up: after that day nobody can be sent for gas work on it."
          isBusy={end.isBusy || withdraw.isBusy}
          onEnd={async (why, lastDay) => finish(await end.act({ licenceId, lastDay, why }))}
          onWithdraw={async (why) => finish(await withdraw.act({ licenceId, why }))}
        />
        <ErrorText error={end.error} />
        <ErrorText error={withdraw.error} />
      </Stack>
    </Panel>
  );
}
