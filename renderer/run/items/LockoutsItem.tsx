/** Lockouts since the last visit: when, how cold it was outside, and the code as shown. */
import { useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { preferredUnit } from '../../../domain/quantity/preferredUnit.ts';
import { typedWithUnit } from '../../../domain/quantity/typedWithUnit.ts';
import { dayWords } from '../../kit/dayWords.ts';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { timeOfDay } from '../clock/timeOfDay.ts';
import { parseDay } from '../note/parseDay.ts';
import { parseTimeOfDay } from '../note/parseTimeOfDay.ts';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import { useRowBoxes } from '../state/useRowBoxes.ts';
import { dayOfInstant } from '../words/dayOfInstant.ts';
import { ListRows } from './ListRows.tsx';

export function LockoutsItem({ item, address }: { readonly item: ItemOf<'lockouts'>; readonly address: ItemAddress }) {
  const { view, unitSystem, saveThen } = useRun();
  const here = { stepKey: address.stepKey, itemKey: item.key };
  const { ref, state, send } = useItemWrites(here);
  const id = useId();
  const { today } = useAppStatus();
  const { timeZone } = view.record.site;
  const unit = preferredUnit('outdoorC', unitSystem);
  const { values, type, clear } = useRowBoxes(here, item.label, {
    day: dayWords(today),
    time: '',
    outdoor: '',
    code: '',
  });
  const { day, time, outdoor, code } = values;
  const firstBox = useRef<HTMLInputElement>(null);
  const [problem, setProblem] = useState('');
  const rows = (view.record.lockouts ?? []).filter((row) => row.itemKey === item.key);

  const add = async () => {
    const read = parseDay(day);
    const at = parseTimeOfDay(time);
    if (read.kind !== 'day') return setProblem('The day can’t be read: type 4 July 2026.');
    if (at === null) return setProblem('The time can’t be read: type 07:20.');
    setProblem('');
    const lockout = {
      ...ref,
      happenedOn: read.on,
      happenedAt: at,
      code: code.trim() || null,
      outdoorText: outdoor.trim() || null,
      outdoorUnit: unit.symbol,
    };
    await saveThen(
      () => send('visits.addLockout', lockout),
      () => {
        flushSync(() => clear(['day', 'time', 'outdoor', 'code']));
        firstBox.current?.focus();
      },
    );
  };
  return (
    <ListRows
      item={item}
      here={here}
      state={state}
      noneWords="No lockout since the last visit"
      rows={rows.map((row) => ({
        rowId: row.rowId,
        words: `${dayWords(dayOfInstant(row.happenedAt, timeZone))}, ${timeOfDay(row.happenedAt, timeZone)}, ${
          row.outdoorTypedText === null
            ? 'outdoor temperature not known'
            : `${typedWithUnit(row.outdoorTypedText, row.outdoorTypedUnit)} outside`
        }${row.code === null ? '' : `, code ${row.code}`}`,
      }))}
      onAdd={add}
      isBlank={`${time}${outdoor}${code}`.trim() === ''}
    >
      <label htmlFor={`${id}-day`}>Day</label>
      <input
        ref={firstBox}
        id={`${id}-day`}
        onFocus={(event) => event.currentTarget.select()}
        className="run-text"
        type="text"
        autoComplete="off"
        value={day}
        onChange={(event) => type('day', event.currentTarget.value)}
      />
      <label htmlFor={`${id}-time`}>Time</label>
      <input
        id={`${id}-time`}
        className="run-text"
        type="text"
        autoComplete="off"
        placeholder="07:20"
        value={time}
        onChange={(event) => type('time', event.currentTarget.value)}
      />
      <label htmlFor={`${id}-outdoor`}>Outside, {unit.symbol}</label>
      <input
        id={`${id}-outdoor`}
        className="run-text"
        type="text"
        autoComplete="off"
        placeholder="if known"
        value={outdoor}
        onChange={(event) => type('outdoor', event.currentTarget.value)}
      />
      <label htmlFor={`${id}-code`}>Code as shown</label>
      <input
        id={`${id}-code`}
        className="run-text"
        type="text"
        autoComplete="off"
        maxLength={100}
        value={code}
        onChange={(event) => type('code', event.currentTarget.value)}
      />
      {problem === '' ? null : (
        <p className="run-problem" role="alert">
          {problem}
        </p>
      )}
    </ListRows>
  );
}
