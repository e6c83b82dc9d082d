/** An empty store: set up the company and its people, or look around in the demo first. */
import { Button, Group, Stack, TextInput } from '@mantine/core';
import { type Ref, useState } from 'react';
import { STAFF_ROLES, type StaffRole } from '../../domain/vocabulary/people.ts';
import { CheckGroup } from '../form/CheckGroup.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { PinInput } from '../form/PinInput.tsx';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { useFocusAdded } from '../form/useFocusAdded.ts';
import { BrandMark } from '../kit/BrandMark.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { roleWords } from '../kit/errorWords.ts';
import { Panel } from '../kit/Panel.tsx';
import { useAct } from '../operations/useAct.ts';
import { CompanyFields } from '../settings/CompanyFields.tsx';
import { type CompanyForm, companyFromForm, suggestCompany } from '../settings/companyForm.ts';
import { initialsOf } from './initialsOf.ts';

type PersonRow = {
  readonly rowId: string;
  readonly name: string;
  readonly initials: string;
  readonly roles: readonly StaffRole[];
};
type FirstRunForm = CompanyForm & { readonly people: readonly PersonRow[] };

export function FirstRunScreen() {
  const openDemo = useAct('app.openDemo');
  // PINs stay out of the kept draft: they are typed again after a reload.
  const [pins, setPins] = useState<Readonly<Record<string, string>>>({});
  const form = useDraftForm<FirstRunForm, 'app.completeFirstRun'>({
    draftKey: 'first-run',
    operation: 'app.completeFirstRun',
    inputRoot: 'company',
    initial: { ...suggestCompany(navigator.language), people: [newPerson(['owner'])] },
    toInput: (values, reader) => ({
      company: companyFromForm(values, reader),
      people: values.people.map(({ rowId, name, initials, roles }) => ({
        name,
        initials,
        roles: [...roles],
        pin: pins[rowId] ?? '',
      })),
    }),
    onDone: () => undefined,
  });
  const setPerson = (index: number, patch: Partial<PersonRow>) =>
    form.set({ people: form.values.people.map((person, at) => (at === index ? { ...person, ...patch } : person)) });

  const { added, rowRef } = useFocusAdded();
  const addPerson = () => {
    const person = newPerson(['technician']);
    added(person.rowId);
    form.set({ people: [...form.values.people, person] });
  };

  return (
    <Stack gap="lg">
      <Group gap="sm">
        <BrandMark side={48} />
        <div>
          <h1>Lightoff</h1>
          <div className="lo-faint">
            From “the fitter says it is ready” to registered, within limits and serviced on time.
          </div>
        </div>
      </Group>
      <Panel
        title="Look around first"
        action={
          <Button variant="default" loading={openDemo.isBusy} onClick={() => void openDemo.act({})}>
            Open the demo
          </Button>
        }
      >
        <p style={{ margin: 0 }}>
          An invented company with customers, boilers and a startup under way, in a store of its own. You can leave it
          at any time; nothing of it gets into yours.
        </p>
        <p role="status" className="lo-faint" style={{ margin: 0 }}>
          {openDemo.isBusy
            ? 'Making three years of visits, once: this may take a quarter of a minute. Nothing has stopped.'
            : ''}
        </p>
        <ErrorText error={openDemo.error} />
      </Panel>
      <DraftFormFrame form={form} submitLabel="Set up the company" failure={<ErrorText error={form.error} />}>
        <Panel title="Your company">
          <CompanyFields form={form} />
        </Panel>
        <Panel title="Who works here">
          <Stack gap="lg">
            {form.values.people.map((person, index) => (
              <PersonFields
                key={person.rowId}
                ref={rowRef(person.rowId)}
                form={form}
                index={index}
                person={person}
                pin={pins[person.rowId] ?? ''}
                onPin={(pin) => {
                  setPins({ ...pins, [person.rowId]: pin });
                  // Not part of the draft, yet what was said about it goes with the typing as everywhere.
                  setPerson(index, {});
                }}
                onChange={(patch) => setPerson(index, patch)}
                {...(index === 0
                  ? {}
                  : {
                      onRemove: () =>
                        form.set({ people: form.values.people.filter(({ rowId }) => rowId !== person.rowId) }),
                    })}
              />
            ))}
            <div>
              <Button variant="default" onClick={addPerson}>
                Add a person
              </Button>
            </div>
          </Stack>
        </Panel>
      </DraftFormFrame>
    </Stack>
  );
}

function PersonFields({
  ref,
  form,
  index,
  person,
  pin,
  onPin,
  onChange,
  onRemove,
}: {
  readonly ref: Ref<HTMLFieldSetElement>;
  readonly form: DraftForm<FirstRunForm>;
  readonly index: number;
  readonly person: PersonRow;
  readonly pin: string;
  readonly onPin: (pin: string) => void;
  readonly onChange: (patch: Partial<PersonRow>) => void;
  readonly onRemove?: () => void;
}) {
  const wrong = (field: string) => form.errors[`people.${index}.${field}`];
  const rename = (name: string) =>
    onChange({ name, ...(person.initials === initialsOf(person.name) ? { initials: initialsOf(name) } : {}) });
  return (
    <fieldset className="lo-fieldset" ref={ref}>
      <legend>{person.name || (index === 0 ? 'First person: the owner' : `Person ${index + 1}`)}</legend>
      <div className="lo-fields">
        <TextInput
          label="Name"
          required
          autoComplete="off"
          value={person.name}
          error={wrong('name')}
          onChange={(event) => rename(event.currentTarget.value)}
        />
        <TextInput
          label="Initials"
          required
          autoComplete="off"
          value={person.initials}
          error={wrong('initials')}
          onChange={(event) => onChange({ initials: event.currentTarget.value })}
        />
        <PinInput label="PIN" description="Four to eight digits." value={pin} onChange={onPin} error={wrong('pin')} />
        <div className="lo-wide">
          <CheckGroup
            label="Roles"
            options={STAFF_ROLES.map((role) => ({ value: role, label: roleWords(role) }))}
            values={person.roles}
            error={wrong('roles')}
            onValues={(roles) => onChange({ roles })}
          />
        </div>
      </div>
      {onRemove ? (
        <Button variant="subtle" mt="xs" onClick={onRemove}>
          Take {person.name || 'this person'} off the list
        </Button>
      ) : null}
    </fieldset>
  );
}

function newPerson(roles: readonly StaffRole[]): PersonRow {
  return { rowId: crypto.randomUUID(), name: '', initials: '', roles };
}
