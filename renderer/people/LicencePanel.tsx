/** Licences of one person: what they allow, where, until when. They are judged on the day of a visit, not today. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import type { StaffMember } from '../../electron/contract/people.ts';
import { AmountField } from '../form/AmountField.tsx';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { usualUnit } from '../form/typedAmount.ts';
import { useDraftForm } from '../form/useDraftForm.ts';
import { AmountText } from '../kit/AmountText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { FUEL_WORDS, keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { InDate } from './InDate.tsx';

export function LicencePanel({ person, mayEdit }: { readonly person: StaffMember; readonly mayEdit: boolean }) {
  const [isAdding, setIsAdding] = useState(false);
  return (
    <Panel
      title="Licences"
      action={
        mayEdit && !isAdding ? (
          <Button variant="default" onClick={() => setIsAdding(true)}>
            Add a licence
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {isAdding ? <LicenceForm staffId={person.staffId} onDone={() => setIsAdding(false)} /> : null}
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
              { label: 'Dates', cell: ({ validFrom, validTo }) => <InDate from={validFrom} to={validTo} /> },
            ]}
          />
        )}
      </Stack>
    </Panel>
  );
}

function LicenceForm({ staffId, onDone }: { readonly staffId: string; readonly onDone: () => void }) {
  const unitSystem = useUnitSystem();
  const form = useDraftForm({
    draftKey: `licence.${staffId}`,
    operation: 'staff.addLicence',
    inputRoot: 'licence',
    initial: {
      number: '',
      issuer: '',
      place: '',
      licenceClass: '',
      fuel: '',
      maxKw: { text: '', unit: usualUnit('power', unitSystem) },
      validFrom: '',
      validTo: '',
    },
    toInput: (values, reader) => ({
      staffId,
      licence: {
        number: values.number,
        issuer: values.issuer,
        place: values.place,
        licenceClass: values.licenceClass,
        fuel: keyOf(FUEL_WORDS, values.fuel),
        maxKw: reader.amount('maxKw', values.maxKw, 'power'),
        validFrom: reader.neededDay('validFrom', values.validFrom),
        validTo: reader.neededDay('validTo', values.validTo),
      },
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <TextField form={form} name="licenceClass" label="Class" isNeeded />
        <TextField form={form} name="number" label="Number" isNeeded />
        <TextField form={form} name="issuer" label="Issued by" isNeeded />
        <TextField form={form} name="place" label="Valid in" placeholder="state, province or country" isNeeded />
        <SelectField form={form} name="fuel" label="Fuel" options={optionsOf(FUEL_WORDS)} emptyLabel="Any" />
        <AmountField form={form} name="maxKw" label="Largest input" description="Empty: any size." dimension="power" />
        <DayField form={form} name="validFrom" label="Valid from" isNeeded />
        <DayField form={form} name="validTo" label="Last day" isNeeded />
      </div>
    </DraftFormFrame>
  );
}
