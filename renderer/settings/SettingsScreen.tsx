/** Settings: my own on this computer first, then the company's. */
import { SegmentedControl, Stack, Switch } from '@mantine/core';
import { useState } from 'react';
import type { CompanyProfile } from '../../electron/contract/app.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Panel } from '../kit/Panel.tsx';
import { UNIT_SYSTEM_OPTIONS } from '../kit/places.ts';
import { Screen } from '../kit/Screen.tsx';
import { LOOKS, type LookName, useLook } from '../Look.tsx';
import { useAppStatus, useHasRole, useSignedIn } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useShortcuts } from '../shortcuts/Shortcuts.tsx';
import { CompanyFields } from './CompanyFields.tsx';
import { companyFromForm, companyToForm } from './companyForm.ts';
import { TravelPanel } from './TravelPanel.tsx';

const LOOK_WORDS: Readonly<Record<LookName, string>> = {
  computer: 'As the computer',
  day: 'Day',
  night: 'Night',
  'high-contrast': 'High contrast',
};

export function SettingsScreen() {
  const { company, dataFolder, version } = useAppStatus();
  const mayEdit = useHasRole('owner', 'dispatcher');
  return (
    <Screen title="Settings">
      <div className="lo-columns">
        <UnitsPanel />
        <LookPanel />
      </div>
      {company !== null && mayEdit ? <CompanyPanel company={company} /> : null}
      {mayEdit ? <TravelPanel /> : null}
      <Panel title="This program">
        <Facts
          facts={[
            ['Version', version],
            ['Data folder', <code key="folder">{dataFolder}</code>],
          ]}
        />
      </Panel>
    </Screen>
  );
}

function UnitsPanel() {
  const { unitSystem } = useAppStatus();
  const person = useSignedIn();
  const choose = useAct('session.chooseUnits');
  return (
    <Panel title="My units">
      <Stack gap="sm">
        <SegmentedControl
          aria-label={`Units for ${person.name}`}
          orientation="vertical"
          value={unitSystem}
          data={[...UNIT_SYSTEM_OPTIONS]}
          onChange={(choice) => void choose.act({ unitSystem: choice === 'us' ? 'us' : 'metric' })}
        />
        <p className="lo-faint" style={{ margin: 0 }}>
          How values are shown to {person.name}. What is on file stays as it was typed.
        </p>
        <ErrorText error={choose.error} />
      </Stack>
    </Panel>
  );
}

function LookPanel() {
  const { look, setLook } = useLook();
  const { isOn, setOn } = useShortcuts();
  return (
    <Panel title="This computer">
      <Stack gap="md">
        <SegmentedControl
          aria-label="Look"
          value={look}
          data={LOOKS.map((value) => ({ value, label: LOOK_WORDS[value] }))}
          onChange={(choice) => {
            const known = LOOKS.find((one) => one === choice);
            if (known !== undefined) setLook(known);
          }}
        />
        <Switch
          size="md"
          label="Single keys as shortcuts (listed on ?)"
          checked={isOn}
          onChange={(event) => setOn(event.currentTarget.checked)}
        />
      </Stack>
    </Panel>
  );
}

function CompanyPanel({ company }: { readonly company: CompanyProfile }) {
  const [isSaved, setIsSaved] = useState(false);
  const form = useDraftForm({
    draftKey: 'company',
    operation: 'company.update',
    initial: companyToForm(company),
    toInput: (values, reader) => companyFromForm(values, reader),
    onDone: () => setIsSaved(true),
  });
  return (
    <Panel title="Company">
      <DraftFormFrame
        form={form}
        submitLabel="Save"
        failure={<ErrorText error={form.error} />}
        beside={
          <span role="status" style={{ color: 'var(--lo-fir)' }}>
            {isSaved ? 'saved' : ''}
          </span>
        }
      >
        <CompanyFields form={form} />
      </DraftFormFrame>
    </Panel>
  );
}
