/** What a plan has to know of one person: hours, days away, where they set out, what else they can do. */
import { Answer } from '../kit/Answer.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { addDays } from '../visits/week.ts';
import { AbsencesPanel } from './AbsencesPanel.tsx';
import { BasePanel, SkillsPanel } from './BasePanel.tsx';
import { HoursPanel } from './HoursPanel.tsx';

/** As far as days off are shown. */
const DAYS_AHEAD = 400;

export function WorkTimePanels({ staffId, mayEdit }: { readonly staffId: string; readonly mayEdit: boolean }) {
  const { today } = useAppStatus();
  const workforce = useOperation('workforce.get', { from: today, to: addDays(today, DAYS_AHEAD) });
  return (
    <Answer of={workforce}>
      {({ people, absences }) => {
        const person = people.find((one) => one.staffId === staffId);
        if (person === undefined) return null;
        return (
          <>
            <AbsencesPanel staffId={staffId} absences={absences} mayEdit={mayEdit} />
            <div className="lo-columns">
              <HoursPanel person={person} mayEdit={mayEdit} />
              <div>
                <BasePanel person={person} mayEdit={mayEdit} />
                <div style={{ height: '1rem' }} />
                <SkillsPanel person={person} mayEdit={mayEdit} />
              </div>
            </div>
          </>
        );
      }}
    </Answer>
  );
}
