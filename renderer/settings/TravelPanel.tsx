/** How the way between two places is reckoned, and the days on which the firm is closed. */
import { USUAL_TRAVEL } from '../../domain/schedule/travel.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import type { FormReader } from '../form/FormReader.ts';
import { readCoordinates } from '../form/readCoordinates.ts';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { AbsencesPanel } from '../people/AbsencesPanel.tsx';
import { addDays } from '../visits/week.ts';
import { TravelTablePanel } from './TravelTablePanel.tsx';

const DAYS_AHEAD = 400;

export function TravelPanel() {
  const { today } = useAppStatus();
  const travel = useOperation('company.getTravel', {});
  const workforce = useOperation('workforce.get', { from: today, to: addDays(today, DAYS_AHEAD) });
  return (
    <>
      <Answer of={travel}>
        {(settings) => (
          <Panel title="Travel">
            <TravelForm settings={settings} />
          </Panel>
        )}
      </Answer>
      <TravelTablePanel />
      <Answer of={workforce}>{({ absences }) => <ClosedDays absences={absences} />}</Answer>
    </>
  );
}

function ClosedDays({ absences }: { readonly absences: OutputOf<'workforce.get'>['absences'] }) {
  return <AbsencesPanel staffId={null} absences={absences} mayEdit />;
}

function TravelForm({ settings }: { readonly settings: OutputOf<'company.getTravel'> }) {
  const { latitude, longitude, roadFactor, speedKmPerH } = settings;
  const form = useDraftForm({
    draftKey: 'travel',
    operation: 'company.setTravel',
    initial: {
      place: latitude === null || longitude === null ? '' : `${latitude}, ${longitude}`,
      roadFactor: roadFactor === null ? '' : String(roadFactor),
      speedKmPerH: speedKmPerH === null ? '' : String(speedKmPerH),
    },
    toInput: (values, reader) => ({
      ...readCoordinates('place', values.place, reader),
      roadFactor: decimal('roadFactor', values.roadFactor, reader),
      speedKmPerH: decimal('speedKmPerH', values.speedKmPerH, reader),
    }),
    onDone: () => undefined,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
      <div className="lo-fields">
        <TextField
          form={form}
          name="place"
          label="The firm’s latitude, longitude"
          description="Where people without a base of their own set out."
          placeholder="44.611, -64.020"
        />
        <TextField
          form={form}
          name="roadFactor"
          label="Road to straight line"
          description={`Empty: ${USUAL_TRAVEL.roadFactor}, common practice.`}
        />
        <TextField
          form={form}
          name="speedKmPerH"
          label="Speed, km/h"
          description={`Door to door. Empty: ${USUAL_TRAVEL.speedKmPerH}, common practice.`}
        />
      </div>
    </DraftFormFrame>
  );
}

function decimal(field: string, text: string, reader: FormReader): number | null {
  const plain = text.trim().replace(',', '.');
  if (plain === '') return null;
  const value = Number(plain);
  if (Number.isFinite(value)) return value;
  reader.fail(field, 'Not a number. Example: 1.3.');
  return null;
}
