/** Which fuel the appliance has been set up for, since when, with which kit and proof; a conversion starts a new baseline. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { FilesField, type StoredFile } from '../form/FilesField.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Caution } from '../kit/Caution.tsx';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { FUEL_WORDS, keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { Thumbnail } from '../run/items/Thumbnail.tsx';

export function FuelPanel({ appliance }: { readonly appliance: OutputOf<'appliances.get'> }) {
  const [isAdding, setIsAdding] = useState(false);
  const mayRecord = useHasRole('technician');
  return (
    <Panel
      title="Fuel and conversions"
      action={
        mayRecord && !isAdding ? (
          <Button variant="default" onClick={() => setIsAdding(true)}>
            Record a conversion
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {isAdding ? <FuelForm applianceId={appliance.applianceId} onDone={() => setIsAdding(false)} /> : null}
        {appliance.fuelStates.length > 0 ? (
          <PlainTable
            caption="Fuel over time"
            rows={appliance.fuelStates}
            keyOf={(state) => `${state.fromOn} ${state.fuel}`}
            columns={[
              { label: 'Fuel', cell: ({ fuel }) => FUEL_WORDS[fuel] },
              { label: 'From', cell: ({ fromOn }) => <DateText day={fromOn} /> },
              { label: 'Kit', cell: ({ conversionKit }) => conversionKit ?? '' },
              { label: 'Orifice', cell: ({ orifice }) => orifice ?? '' },
              { label: 'Proof', cell: ({ proof }) => proof ?? '' },
              { label: 'Photo', cell: (state) => <ConversionPhotos state={state} /> },
            ]}
          />
        ) : isAdding ? null : (
          <EmptyState title="As on the plate">
            A conversion is recorded here by the technician who did it, with kit, orifice and photo.
          </EmptyState>
        )}
      </Stack>
    </Panel>
  );
}

/** Without all three it is a note: it opens no hold before firing. */
function ConversionPhotos({ state }: { readonly state: OutputOf<'appliances.get'>['fuelStates'][number] }) {
  const { photoIds, conversionKit, orifice } = state;
  if (photoIds.length === 0 || conversionKit === null || orifice === null)
    return 'not proven: kit, orifice or photo missing';
  return (
    <Group gap="xs">
      {photoIds.map((attachmentId, index) => (
        <Thumbnail key={attachmentId} attachmentId={attachmentId} label={`Conversion, photo ${index + 1}`} />
      ))}
    </Group>
  );
}

function FuelForm({ applianceId, onDone }: { readonly applianceId: string; readonly onDone: () => void }) {
  const { today } = useAppStatus();
  const form = useDraftForm({
    draftKey: `fuel.${applianceId}`,
    operation: 'appliances.recordFuelState',
    initial: {
      fuel: 'propane',
      fromOn: dayWords(today),
      conversionKit: '',
      orifice: '',
      proof: '',
      photoIds: [] as readonly StoredFile[],
    },
    toInput: (values, reader) => ({
      applianceId,
      fuel: keyOf(FUEL_WORDS, values.fuel) ?? 'propane',
      fromOn: reader.neededDay('fromOn', values.fromOn),
      conversionKit: values.conversionKit,
      orifice: values.orifice,
      proof: reader.optional(values.proof),
      photoIds: values.photoIds.map(({ attachmentId }) => attachmentId),
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Record" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <Caution>Conversions only with the maker’s kit, by a licensed person, as the maker’s manual says.</Caution>
      <div className="lo-fields">
        <SelectField form={form} name="fuel" label="Set up for" options={optionsOf(FUEL_WORDS)} />
        <DayField form={form} name="fromOn" label="From" isNeeded />
        <TextField form={form} name="conversionKit" label="Conversion kit number" isNeeded />
        <TextField
          form={form}
          name="orifice"
          label="Orifice marking"
          description="As stamped on it; “none” where the kit has none"
          isNeeded
        />
        <TextField
          form={form}
          name="proof"
          label="Anything else that proves it"
          placeholder="label fixed, rate clocked …"
        />
        <FilesField form={form} name="photoIds" label="Photo of kit, orifice and label" takes="photos" isNeeded />
      </div>
    </DraftFormFrame>
  );
}
