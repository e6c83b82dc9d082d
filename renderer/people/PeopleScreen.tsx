/** Everybody who works here, with what they may do and until when. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { PinInput } from '../form/PinInput.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { roleWords } from '../kit/errorWords.ts';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { InDate } from './InDate.tsx';
import { StaffFieldset, type StaffForm } from './StaffFieldset.tsx';

export function PeopleScreen() {
  const staff = useOperation('staff.list', {});
  const mayEdit = useHasRole('owner', 'dispatcher');
  const [isAdding, setIsAdding] = useState(false);
  return (
    <Screen
      title="People"
      action={mayEdit && !isAdding ? <Button onClick={() => setIsAdding(true)}>New person</Button> : undefined}
    >
      {isAdding ? <NewPersonPanel onLeave={() => setIsAdding(false)} /> : null}
      <Answer of={staff}>
        {(people) =>
          people.length === 0 ? (
            <EmptyState title="Nobody yet">Everybody who signs in here, with their licences and trainings.</EmptyState>
          ) : (
            <PlainTable
              caption="People"
              rows={people}
              keyOf={(person) => person.staffId}
              columns={[
                {
                  label: 'Name',
                  cell: (person) => (
                    <RouteLink to="staff-member" params={{ staffId: person.staffId }}>
                      {person.name}
                    </RouteLink>
                  ),
                },
                { label: 'Roles', cell: ({ roles }) => roles.map(roleWords).join(', ') },
                {
                  label: 'Licences',
                  cell: ({ licences, roles }) =>
                    licences.length === 0 ? (
                      roles.includes('technician') ? (
                        <span style={{ color: 'var(--lo-ochre)' }}>none: no gas work</span>
                      ) : (
                        ''
                      )
                    ) : (
                      <Stack gap={2}>
                        {licences.map((licence) => (
                          <span key={licence.licenceId}>
                            {licence.licenceClass}, {licence.place}:{' '}
                            <InDate from={licence.validFrom} to={licence.validTo} />
                          </span>
                        ))}
                      </Stack>
                    ),
                },
                { label: 'Here', cell: ({ activeTo }) => (activeTo === null ? 'yes' : 'left') },
              ]}
            />
          )
        }
      </Answer>
    </Screen>
  );
}

const NOBODY: StaffForm = { name: '', initials: '', phone: '', email: '', roles: ['technician'] };

function NewPersonPanel({ onLeave }: { readonly onLeave: () => void }) {
  // Stays out of the kept draft.
  const [pin, setPin] = useState('');
  const form = useDraftForm({
    draftKey: 'new-person',
    operation: 'staff.create',
    initial: NOBODY,
    toInput: (values, reader) => ({
      name: values.name,
      initials: values.initials,
      phone: reader.optional(values.phone),
      email: reader.optional(values.email),
      roles: [...values.roles],
      pin,
    }),
    onDone: ({ staffId }) => goTo('staff-member', { staffId }),
  });
  return (
    <Panel title="New person">
      <DraftFormFrame form={form} submitLabel="Add person" failure={<ErrorText error={form.error} />} onLeave={onLeave}>
        <StaffFieldset form={form} />
        <div style={{ maxWidth: '20rem' }}>
          <PinInput
            label="PIN"
            description="Four to eight digits; they can ask the owner for another."
            value={pin}
            onChange={setPin}
            error={form.errors['pin']}
          />
        </div>
      </DraftFormFrame>
    </Panel>
  );
}
