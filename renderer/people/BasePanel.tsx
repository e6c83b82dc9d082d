/** Where somebody's day begins and ends, and what else they can do: both are what a plan reckons with. */
import { Stack } from '@mantine/core';
import type { WorkforceMember } from '../../electron/contract/workforce.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { readCoordinates } from '../form/readCoordinates.ts';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Panel } from '../kit/Panel.tsx';

export function BasePanel({ person, mayEdit }: { readonly person: WorkforceMember; readonly mayEdit: boolean }) {
  return (
    <Panel title="Sets out from">
      {mayEdit ? (
        <BaseForm person={person} />
      ) : (
        <Facts facts={[['Address', [person.base.street, person.base.city].filter(Boolean).join(', ')]]} />
      )}
    </Panel>
  );
}

export function SkillsPanel({ person, mayEdit }: { readonly person: WorkforceMember; readonly mayEdit: boolean }) {
  return (
    <Panel title="Skills">
      {mayEdit ? <SkillsForm person={person} /> : <Facts facts={[['Can also', person.skills.join(', ')]]} />}
    </Panel>
  );
}

function BaseForm({ person: { staffId, base } }: { readonly person: WorkforceMember }) {
  const form = useDraftForm({
    draftKey: `base.${staffId}`,
    operation: 'staff.setBase',
    inputRoot: 'base',
    initial: {
      street: base.street ?? '',
      postcode: base.postcode ?? '',
      city: base.city ?? '',
      place: base.latitude === null || base.longitude === null ? '' : `${base.latitude}, ${base.longitude}`,
    },
    toInput: (values, reader) => ({
      staffId,
      base: {
        street: reader.optional(values.street),
        postcode: reader.optional(values.postcode),
        city: reader.optional(values.city),
        ...readCoordinates('place', values.place, reader),
      },
    }),
    onDone: () => undefined,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
      <div className="lo-fields">
        <TextField form={form} name="street" label="Street" />
        <TextField form={form} name="postcode" label="Postcode" />
        <TextField form={form} name="city" label="City" />
        <TextField
          form={form}
          name="place"
          label="Latitude, longitude"
          description="As any map shows it. Empty: the firm’s own place."
          placeholder="44.618, -64.031"
        />
      </div>
    </DraftFormFrame>
  );
}

function SkillsForm({ person: { staffId, skills } }: { readonly person: WorkforceMember }) {
  const form = useDraftForm({
    draftKey: `skills.${staffId}`,
    operation: 'staff.setSkills',
    initial: { skills: skills.join(', ') },
    toInput: (values) => ({
      staffId,
      skills: values.skills
        .split(',')
        .map((skill) => skill.trim())
        .filter((skill) => skill !== ''),
    }),
    onDone: () => undefined,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
      <Stack>
        <TextField
          form={form}
          name="skills"
          label="Can also"
          description="Beside licences and trainings, in your own words with commas between. A job may ask for them."
          placeholder="cascade, ladder, oil"
        />
      </Stack>
    </DraftFormFrame>
  );
}
