/** Instruments with their calibration: a reading taken out of date is not proven. */
import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import type { Instrument } from '../../electron/contract/people.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { FilesField, type StoredFile } from '../form/FilesField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { InDate } from '../people/InDate.tsx';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { ChangeInstrumentPanel } from './ChangeInstrumentPanel.tsx';
import { INSTRUMENT_WORDS } from './instrumentWords.ts';
import { NewInstrumentPanel } from './NewInstrumentPanel.tsx';

export function InstrumentsScreen() {
  const found = useOperation('instruments.list', {});
  const staff = useOperation('staff.list', {});
  const [isAdding, setIsAdding] = useState(false);
  const [calibrating, setCalibrating] = useState<string | null>(null);
  const [changing, setChanging] = useState<string | null>(null);
  const mayChange = useHasRole('owner', 'dispatcher');
  const putBack = useAct('instruments.putBack');
  const nameOf = (staffId: string | null) =>
    staff.state === 'ready' ? (staff.value.find((person) => person.staffId === staffId)?.name ?? '') : '';
  const mayAdd = useHasRole('owner', 'dispatcher', 'technician');
  const addButton = mayAdd ? <Button onClick={() => setIsAdding(true)}>New instrument</Button> : undefined;
  return (
    <Screen title="Instruments" action={isAdding ? undefined : addButton}>
      <Shortcut keys="n" label="New instrument" onPress={() => setIsAdding(true)} />
      {isAdding ? <NewInstrumentPanel onDone={() => setIsAdding(false)} /> : null}
      <Answer of={found}>
        {(instruments) => {
          const chosen = instruments.find(({ instrumentId }) => instrumentId === calibrating);
          const changed = instruments.find(({ instrumentId }) => instrumentId === changing);
          return instruments.length === 0 ? (
            <EmptyState title="No instruments yet" action={isAdding ? undefined : addButton}>
              Analysers, manometers, thermometers: each with serial number, accuracy and calibration. The run asks which
              one a reading was taken with.
            </EmptyState>
          ) : (
            <>
              {chosen ? (
                <CalibrationPanel key={chosen.instrumentId} instrument={chosen} onDone={() => setCalibrating(null)} />
              ) : null}
              {changed ? (
                <ChangeInstrumentPanel
                  key={changed.instrumentId}
                  instrument={changed}
                  onDone={() => setChanging(null)}
                />
              ) : null}
              <ErrorText error={putBack.error} />
              <PlainTable
                caption="Instruments"
                rows={instruments}
                keyOf={({ instrumentId }) => instrumentId}
                columns={[
                  {
                    label: 'Instrument',
                    cell: ({ label, kind }) => (
                      <>
                        <strong>{label}</strong>
                        <div className="lo-faint">{INSTRUMENT_WORDS[kind]}</div>
                      </>
                    ),
                  },
                  { label: 'Serial', cell: ({ serial }) => serial },
                  { label: 'Kept by', cell: ({ keptById }) => nameOf(keptById) },
                  {
                    label: 'Calibration',
                    cell: (instrument) => <CalibrationState instrument={instrument} />,
                  },
                  {
                    label: 'Certificate',
                    cell: ({ certificate, calibratedOn, certificateIds, label }) => (
                      <>
                        {certificate}
                        {certificateIds.map((attachmentId) => (
                          <DownloadButton
                            key={attachmentId}
                            attachmentId={attachmentId}
                            what={`certificate of ${label}`}
                          />
                        ))}
                        {calibratedOn === null ? null : (
                          <div className="lo-faint">
                            <DateText day={calibratedOn} />
                          </div>
                        )}
                      </>
                    ),
                  },
                  {
                    label: 'Change',
                    cell: ({ instrumentId, label, retiredOn }) => (
                      <Group gap="sm">
                        {mayAdd && retiredOn === null ? (
                          <Button variant="default" onClick={() => setCalibrating(instrumentId)}>
                            Record calibration<span className="lo-hidden"> of {label}</span>
                          </Button>
                        ) : null}
                        {mayChange && retiredOn === null ? (
                          <Button variant="default" onClick={() => setChanging(instrumentId)}>
                            Change<span className="lo-hidden"> {label}</span>
                          </Button>
                        ) : null}
                        {mayChange && retiredOn !== null ? (
                          <Button
                            variant="default"
                            loading={putBack.isBusy}
                            onClick={() => void putBack.act({ instrumentId })}
                          >
                            Put back in use<span className="lo-hidden"> {label}</span>
                          </Button>
                        ) : null}
                      </Group>
                    ),
                  },
                ]}
              />
            </>
          );
        }}
      </Answer>
    </Screen>
  );
}

function CalibrationState({ instrument }: { readonly instrument: Instrument }) {
  if (instrument.retiredOn !== null) {
    return (
      <>
        out of use since {dayWords(instrument.retiredOn)}
        {instrument.endReason === null ? null : <div className="lo-faint">{instrument.endReason}</div>}
      </>
    );
  }
  if (instrument.dueOn === null) {
    return (
      <span className="lo-verdict" data-tone="doubt">
        no calibration on file
      </span>
    );
  }
  return <InDate to={instrument.dueOn} />;
}

function CalibrationPanel({ instrument, onDone }: { readonly instrument: Instrument; readonly onDone: () => void }) {
  const { today } = useAppStatus();
  const isOffice = useHasRole('owner', 'dispatcher');
  const { instrumentId } = instrument;
  const form = useDraftForm({
    draftKey: `calibration.${instrumentId}`,
    operation: 'instruments.addCalibration',
    initial: { calibratedOn: dayWords(today), dueOn: '', certificate: '', papers: [] as readonly StoredFile[] },
    toInput: (values, reader) => ({
      instrumentId,
      calibratedOn: reader.neededDay('calibratedOn', values.calibratedOn),
      dueOn: reader.neededDay('dueOn', values.dueOn),
      certificate: reader.optional(values.certificate),
      paperIds: values.papers.map(({ attachmentId }) => attachmentId),
    }),
    onDone,
  });
  return (
    <Panel title={`Calibration of ${instrument.label}`}>
      <DraftFormFrame form={form} submitLabel="Record" failure={<ErrorText error={form.error} />} onLeave={onDone}>
        <div className="lo-fields">
          <DayField form={form} name="calibratedOn" label="Calibrated on" isNeeded />
          <DayField form={form} name="dueOn" label="Due again" isNeeded />
          <TextField form={form} name="certificate" label="Certificate number" />
          <FilesField form={form} name="papers" label="Certificate" takes="papers" isNeeded={!isOffice} />
        </div>
      </DraftFormFrame>
    </Panel>
  );
}
