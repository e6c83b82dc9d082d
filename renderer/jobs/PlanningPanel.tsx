/** What a job asks of the plan: how it presses, which days suit, how long it takes, who is needed. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { durationWords, readDuration } from '../form/readTime.ts';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useOperation } from '../operations/useOperation.ts';

export function PlanningPanel({ jobId }: { readonly jobId: string }) {
  const planning = useOperation('jobs.getPlanning', { jobId });
  return (
    <Panel title="For the plan">
      <Answer of={planning}>{(given) => <PlanningForm jobId={jobId} planning={given} />}</Answer>
    </Panel>
  );
}

const PRIORITIES = [
  { value: '0', label: 'can wait' },
  { value: '1', label: 'as usual' },
  { value: '2', label: 'soon' },
  { value: '3', label: 'before everything else' },
];

function PlanningForm({
  jobId,
  planning,
}: {
  readonly jobId: string;
  readonly planning: OutputOf<'jobs.getPlanning'>;
}) {
  const day = (on: string | null) => (on === null ? '' : dayWords(on));
  const form = useDraftForm({
    draftKey: `planning.${jobId}`,
    operation: 'jobs.setPlanning',
    initial: {
      priority: String(planning.priority),
      wantedFromOn: day(planning.wantedFromOn),
      wantedToOn: day(planning.wantedToOn),
      latestOn: day(planning.latestOn),
      latestWhy: planning.latestWhy ?? '',
      expectedMin: planning.expectedMin === null ? '' : durationWords(planning.expectedMin),
      skills: planning.skills.join(', '),
    },
    toInput: (values, reader) => {
      const expectedMin = values.expectedMin.trim() === '' ? null : readDuration(values.expectedMin);
      if (expectedMin === null && values.expectedMin.trim() !== '')
        reader.fail('expectedMin', 'Not a length of time. Example: 2 h 30 min.');
      return {
        jobId,
        priority: Number(values.priority),
        wantedFromOn: reader.day('wantedFromOn', values.wantedFromOn),
        wantedToOn: reader.day('wantedToOn', values.wantedToOn),
        latestOn: reader.day('latestOn', values.latestOn),
        latestWhy: reader.optional(values.latestWhy),
        expectedMin,
        skills: values.skills
          .split(',')
          .map((skill) => skill.trim())
          .filter((skill) => skill !== ''),
      };
    },
    onDone: () => undefined,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
      <div className="lo-fields">
        <SelectField form={form} name="priority" label="How it presses" options={PRIORITIES} />
        <DayField form={form} name="wantedFromOn" label="Suits from" />
        <DayField form={form} name="wantedToOn" label="Suits until" />
        <DayField form={form} name="latestOn" label="Latest day" />
        <TextField form={form} name="latestWhy" label="Why then" placeholder="cover, handover, season" />
        <TextField
          form={form}
          name="expectedMin"
          label="Time on site"
          description={`Empty: ${durationWords(planning.suggestedMin)}, by kind and model.`}
        />
        <TextField form={form} name="skills" label="Needs" placeholder="ladder, cascade" />
      </div>
    </DraftFormFrame>
  );
}
