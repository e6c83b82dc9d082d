/** Words, a time of day or a calendar day. A day that can be read two ways is asked about, never guessed. */
import { useId } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useOperation } from '../../operations/useOperation.ts';
import { ServiceDueWords } from '../../service/ServiceDueWords.tsx';
import { timeOfDay } from '../clock/timeOfDay.ts';
import { useField } from '../field/useField.ts';
import { isAltKey } from '../focus/isAltKey.ts';
import { dayInWords, parseDay } from '../note/parseDay.ts';
import { parseTimeOfDay } from '../note/parseTimeOfDay.ts';
import { newestAnswer } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { useAnswerSave } from '../state/useItemWrites.ts';

export function NoteItem({ item, address }: { readonly item: ItemOf<'note'>; readonly address: ItemAddress }) {
  const { view, saveAndGoOn } = useRun();
  const here = { stepKey: address.stepKey, itemKey: item.key };
  const saveAnswer = useAnswerSave(here);
  const given = newestAnswer(view.record, item.key);
  const messageId = useId();
  const { applianceId } = view.visit.jobs.find((job) => job.runId === view.runId) ?? {};
  const field = useField({
    address: here,
    box: 'note',
    label: item.label,
    stored: given?.value ?? '',
    save: async (text) => {
      const read = readNote(item.holds, text);
      return read.ok ? saveAnswer(read.value, null) : { ok: false, why: read.why };
    },
  });
  const meanings = item.holds === 'date' ? ambiguousDays(field.text) : [];
  const asksNextService = item.holds === 'date' && item.meets.includes(NEXT_SERVICE) && applianceId !== undefined;
  const dueOf = view.record.kind === 'service' ? 'if-done-today' : 'next';
  const found = useOperation('service.getDue', { applianceId: applianceId ?? '' }, { isWanted: asksNextService });
  const due = found.state !== 'ready' ? null : dueOf === 'next' ? found.value.next : found.value.ifDoneToday;
  const nowText = timeOfDay(new Date().toISOString(), view.record.site.timeZone);

  const take = (text: string) => {
    field.type(text);
    void saveAndGoOn(here, field.commit);
  };
  return (
    <div className="run-note">
      <div className="run-box-row">
        <input
          className="run-text"
          data-wide={item.holds === 'text'}
          data-main
          type="text"
          autoComplete="off"
          spellCheck={false}
          maxLength={item.holds === 'text' ? 4000 : 40}
          aria-labelledby={`label-${item.key}`}
          aria-describedby={messageId}
          placeholder={PLACEHOLDERS[item.holds]}
          value={field.text}
          onChange={(event) => field.type(event.currentTarget.value)}
          onBlur={() => void field.commit()}
          onKeyDown={(event) => {
            const meaning = meanings[['1', '2'].findIndex((key) => isAltKey(event, key))];
            if (meaning !== undefined) take(meaning);
            else if (item.holds === 'time' && isAltKey(event, 'N')) take(nowText);
            else if (due !== null && isAltKey(event, 'N')) take(due.dueOn);
            else if (event.key === 'Enter') void saveAndGoOn(here, field.commit);
            else return;
            event.preventDefault();
          }}
        />
        {item.holds === 'time' ? (
          <button type="button" className="run-button" onClick={() => take(nowText)}>
            Now, {nowText} <KeyHint keys="Alt+N" />
          </button>
        ) : null}
        {due === null ? null : (
          <button type="button" className="run-button" onClick={() => take(due.dueOn)}>
            {dayInWords(due.dueOn)} <KeyHint keys="Alt+N" />
          </button>
        )}
        <FieldSaved state={field.state} />
      </div>
      <div id={messageId}>
        {item.identifies === 'serial' ? (
          <p className="run-card-hint">
            The job says <b className="run-serial">{view.record.appliance.serial}</b>. Type what the plate says.
          </p>
        ) : null}
        {asksNextService ? (
          <p className="run-card-hint">
            <ServiceDueWords applianceId={applianceId} of={dueOf} />
          </p>
        ) : null}
        {meanings.map((meaning, index) => (
          <button key={meaning} type="button" className="run-button" onClick={() => take(meaning)}>
            <KeyHint keys={`Alt+${index + 1}`} /> {dayInWords(meaning)}
          </button>
        ))}
      </div>
    </div>
  );
}

/** The demand of practice that the day of the next service is written down. */
const NEXT_SERVICE = '2.0/annual-service';

const PLACEHOLDERS = { text: '', time: '14:32', date: '4 July 2026' } as const;

type ReadNote = { readonly ok: true; readonly value: string } | { readonly ok: false; readonly why: string };

function readNote(holds: ItemOf<'note'>['holds'], text: string): ReadNote {
  if (holds === 'text') return { ok: true, value: text.trim() };
  if (holds === 'time') {
    const time = parseTimeOfDay(text);
    return time === null ? { ok: false, why: 'not a time of day: type 14:32' } : { ok: true, value: time };
  }
  const day = parseDay(text);
  if (day.kind === 'day') return { ok: true, value: day.on };
  return {
    ok: false,
    why: day.kind === 'ambiguous' ? 'day and month can be read two ways: which one?' : 'not a day: type 4 July 2026',
  };
}

function ambiguousDays(text: string): readonly string[] {
  const day = parseDay(text);
  return day.kind === 'ambiguous' ? day.meanings : [];
}
