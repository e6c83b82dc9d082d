/** Licences of one person: what they allow, where, until when. They are judged on the day of a visit, not today. */
import { Stack } from '@mantine/core';
import type { Licence, StaffMember } from '../../electron/contract/people.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { AmountText } from '../kit/AmountText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { FUEL_WORDS } from '../kit/tradeWords.ts';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { EndOrWithdraw } from './EndOrWithdraw.tsx';
import { LicenceFieldset } from './LicenceFieldset.tsx';
import { emptyLicence, licenceFromForm, licenceToForm } from './licenceForm.ts';
import { PapersPanel } from './PapersPanel.tsx';

export function LicencePanel({ person, mayEdit }: { readonly person: StaffMember; readonly mayEdit: boolean }) {
  const putBack = useAct('staff.putBackLicence');
  return (
    <PapersPanel
      title="Licences"
      word="licence"
      addKey="l"
      papers={person.licences}
      withdrawn={person.withdrawn.licences}
      idOf={({ licenceId }) => licenceId}
      nameOf={({ licenceClass, number }) => `${licenceClass}, ${number}`}
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
      ]}
      empty="Without one that covers fuel, size and day, nobody can be sent for gas work or sign its results."
      mayEdit={mayEdit}
      onPutBack={(licenceId) => void putBack.act({ licenceId })}
      failure={<ErrorText error={putBack.error} />}
      newForm={(onDone) => <NewLicenceForm staffId={person.staffId} onDone={onDone} />}
      changeForm={(licence, onDone) => <LicenceChange key={licence.licenceId} licence={licence} onDone={onDone} />}
    />
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
