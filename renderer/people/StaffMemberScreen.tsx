/** One person: particulars, licences, trainings, a new PIN. */
import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import type { StaffMember } from '../../electron/contract/people.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { PinInput } from '../form/PinInput.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { roleWords } from '../kit/errorWords.ts';
import { Facts } from '../kit/Facts.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { LicencePanel } from './LicencePanel.tsx';
import { StaffFieldset } from './StaffFieldset.tsx';
import { TrainingPanel } from './TrainingPanel.tsx';
import { WorkTimePanels } from './WorkTimePanels.tsx';

export function StaffMemberScreen({ staffId }: { readonly staffId: string }) {
  const staff = useOperation('staff.list', {});
  const person = staff.state === 'ready' ? staff.value.find((one) => one.staffId === staffId) : undefined;
  return (
    <Screen
      title={person?.name ?? 'Person'}
      crumbs={
        <RouteLink to="people" params={{}}>
          People
        </RouteLink>
      }
    >
      <Answer of={staff}>
        {() =>
          person === undefined ? <Note tone="caution">This person is not on file.</Note> : <Member person={person} />
        }
      </Answer>
    </Screen>
  );
}

function Member({ person }: { readonly person: StaffMember }) {
  const mayEdit = useHasRole('owner', 'dispatcher');
  const maySetPin = useHasRole('owner');
  const [isEditing, setIsEditing] = useState(false);
  return (
    <>
      <LicencePanel person={person} mayEdit={mayEdit} />
      <TrainingPanel person={person} mayEdit={mayEdit} />
      <WorkTimePanels staffId={person.staffId} mayEdit={mayEdit} />
      <div className="lo-columns">
        <Panel
          title="Particulars"
          action={
            mayEdit && !isEditing ? (
              <Button variant="default" onClick={() => setIsEditing(true)}>
                Edit
              </Button>
            ) : undefined
          }
        >
          {isEditing ? (
            <EditForm person={person} onDone={() => setIsEditing(false)} />
          ) : (
            <Facts
              facts={[
                ['Initials', person.initials],
                ['Roles', person.roles.map(roleWords).join(', ')],
                ['Phone', person.phone],
                ['E-mail', person.email],
                ['Here since', <DateText key="from" day={person.activeFrom} />],
                ...(person.activeTo === null
                  ? []
                  : ([['Last day', <DateText key="to" day={person.activeTo} />]] as const)),
              ]}
            />
          )}
        </Panel>
        {maySetPin ? <PinPanel person={person} /> : null}
      </div>
    </>
  );
}

function EditForm({ person, onDone }: { readonly person: StaffMember; readonly onDone: () => void }) {
  const { staffId } = person;
  const form = useDraftForm({
    draftKey: `staff.${staffId}`,
    operation: 'staff.update',
    initial: {
      name: person.name,
      initials: person.initials,
      phone: person.phone ?? '',
      email: person.email ?? '',
      roles: person.roles,
      activeTo: person.activeTo === null ? '' : dayWords(person.activeTo),
    },
    toInput: (values, reader) => ({
      staffId,
      name: values.name,
      initials: values.initials,
      phone: reader.optional(values.phone),
      email: reader.optional(values.email),
      roles: [...values.roles],
      activeTo: reader.day('activeTo', values.activeTo),
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <StaffFieldset form={form} />
      <DayField
        form={form}
        name="activeTo"
        label="Last day here"
        description="After it they can neither sign in nor be sent; what they recorded stays."
      />
    </DraftFormFrame>
  );
}

function PinPanel({ person }: { readonly person: StaffMember }) {
  const setPin = useAct('staff.setPin');
  const [pin, setPinText] = useState('');
  const [isDone, setIsDone] = useState(false);
  return (
    <Panel title="New PIN">
      <form
        onSubmit={async (event) => {
          event.preventDefault();
          const reply = await setPin.act({ staffId: person.staffId, pin });
          setIsDone(reply.ok);
          if (reply.ok) setPinText('');
        }}
      >
        <PinInput
          label={`PIN of ${person.name}`}
          description="Four to eight digits."
          value={pin}
          onChange={(text) => {
            setPinText(text);
            setIsDone(false);
          }}
        />
        <ErrorText error={setPin.error} />
        <Group mt="sm">
          <Button type="submit" variant="default" disabled={pin.length < 4} loading={setPin.isBusy}>
            Set the PIN
          </Button>
          <span role="status" style={{ color: 'var(--lo-fir)' }}>
            {isDone ? 'set' : ''}
          </span>
        </Group>
      </form>
    </Panel>
  );
}
