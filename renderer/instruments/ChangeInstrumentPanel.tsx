/** An instrument put right: its particulars, its latest calibration, and taking it out of use. */
import { Stack } from '@mantine/core';
import type { Instrument } from '../../electron/contract/people.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { AskReason } from '../kit/AskReason.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { InstrumentFieldset } from './InstrumentFieldset.tsx';
import { type InstrumentForm, instrumentFromForm, instrumentToForm } from './instrumentForm.ts';

export function ChangeInstrumentPanel({
  instrument,
  onDone,
}: {
  readonly instrument: Instrument;
  readonly onDone: () => void;
}) {
  const { instrumentId } = instrument;
  const { today } = useAppStatus();
  const retire = useAct('instruments.retire');
  const form = useDraftForm<InstrumentForm, 'instruments.update'>({
    draftKey: `instrument.${instrumentId}`,
    operation: 'instruments.update',
    inputRoot: 'instrument',
    initial: instrumentToForm(instrument),
    toInput: (values, reader) => ({ instrumentId, instrument: instrumentFromForm(values, reader) }),
    onDone,
  });
  return (
    <Panel title={`Change ${instrument.label}`}>
      <Stack>
        <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
          <InstrumentFieldset form={form} />
        </DraftFormFrame>
        {instrument.calibrationId === null ? null : (
          <CalibrationChange
            key={instrument.calibrationId}
            calibrationId={instrument.calibrationId}
            instrument={instrument}
            onDone={onDone}
          />
        )}
        <AskReason
          label="Take it out of use"
          confirmLabel="Take it out"
          dayLabel="Last day in use"
          day={today}
          isBusy={retire.isBusy}
          onConfirm={async (why, on) => {
            const { ok } = await retire.act({ instrumentId, on, why });
            if (ok) onDone();
            return ok;
          }}
        >
          Broken, lost or sold: no visit offers it any more, and nobody counts as having it. What was read with it
          stays, and it can be put back.
        </AskReason>
        <ErrorText error={retire.error} />
      </Stack>
    </Panel>
  );
}

function CalibrationChange({
  calibrationId,
  instrument,
  onDone,
}: {
  readonly calibrationId: string;
  readonly instrument: Instrument;
  readonly onDone: () => void;
}) {
  const withdraw = useAct('instruments.withdrawCalibration');
  const form = useDraftForm({
    draftKey: `calibration-change.${calibrationId}`,
    operation: 'instruments.correctCalibration',
    initial: {
      calibratedOn: instrument.calibratedOn === null ? '' : dayWords(instrument.calibratedOn),
      dueOn: instrument.dueOn === null ? '' : dayWords(instrument.dueOn),
      certificate: instrument.certificate ?? '',
    },
    toInput: (values, reader) => ({
      calibrationId,
      calibratedOn: reader.neededDay('calibratedOn', values.calibratedOn),
      dueOn: reader.neededDay('dueOn', values.dueOn),
      certificate: reader.optional(values.certificate),
    }),
    onDone,
  });
  return (
    <Panel title="Its latest calibration" level={3}>
      <Stack>
        <DraftFormFrame form={form} submitLabel="Save the calibration" failure={<ErrorText error={form.error} />}>
          <div className="lo-fields">
            <DayField form={form} name="calibratedOn" label="Calibrated on" isNeeded />
            <DayField form={form} name="dueOn" label="Due again" isNeeded />
            <TextField form={form} name="certificate" label="Certificate number" />
          </div>
        </DraftFormFrame>
        <AskReason
          label="Withdraw this calibration"
          confirmLabel="Withdraw it"
          isBusy={withdraw.isBusy}
          onConfirm={async (why) => {
            const { ok } = await withdraw.act({ calibrationId, why });
            if (ok) onDone();
            return ok;
          }}
        >
          For one that never was: the calibration before it counts again. Record it anew to take this back.
        </AskReason>
        <ErrorText error={withdraw.error} />
      </Stack>
    </Panel>
  );
}
