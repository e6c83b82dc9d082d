/** Which parts were changed, each with its number; those that want the burner tuned anew say so at once. */
import { useId, useRef } from 'react';
import { flushSync } from 'react-dom';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import { useRowBoxes } from '../state/useRowBoxes.ts';
import { ListRows } from './ListRows.tsx';

export function PartsItem({ item, address }: { readonly item: ItemOf<'parts'>; readonly address: ItemAddress }) {
  const { view, saveThen } = useRun();
  const here = { stepKey: address.stepKey, itemKey: item.key };
  const { ref, state, send } = useItemWrites(here);
  const id = useId();
  const parts = view.sheet.parts ?? [];
  const { values, type, clear } = useRowBoxes(here, item.label, {
    part: parts[0]?.key ?? '',
    number: '',
    serial: '',
  });
  const { part: partKey, number: partNumber, serial } = values;
  const firstBox = useRef<HTMLSelectElement>(null);
  const numberBox = useRef<HTMLInputElement>(null);
  const chosen = parts.find(({ key }) => key === partKey);
  const rows = (view.record.parts ?? []).filter((row) => row.itemKey === item.key);

  const add = async () => {
    if (partNumber.trim() === '') return numberBox.current?.focus();
    const part = { ...ref, partKey, partNumber: partNumber.trim(), serial: serial.trim() || null };
    await saveThen(
      () => send('visits.addPart', part),
      () => {
        flushSync(() => clear(['part', 'number', 'serial']));
        firstBox.current?.focus();
      },
    );
  };
  return (
    <ListRows
      item={item}
      here={here}
      state={state}
      noneWords="No part was changed"
      rows={rows.map((row) => ({
        rowId: row.rowId,
        words: `${parts.find(({ key }) => key === row.partKey)?.label ?? row.partKey}, ${row.partNumber}${
          row.serial === null ? '' : `, serial ${row.serial}`
        }`,
      }))}
      onAdd={add}
      isBlank={`${partNumber}${serial}`.trim() === ''}
    >
      <label htmlFor={`${id}-part`}>Part</label>
      <select
        ref={firstBox}
        id={`${id}-part`}
        className="run-text"
        value={partKey}
        onChange={(event) => type('part', event.currentTarget.value)}
      >
        {parts.map(({ key, label }) => (
          <option key={key} value={key}>
            {label}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}-number`}>Number</label>
      <input
        ref={numberBox}
        id={`${id}-number`}
        className="run-text"
        type="text"
        autoComplete="off"
        maxLength={100}
        value={partNumber}
        onChange={(event) => type('number', event.currentTarget.value)}
      />
      <label htmlFor={`${id}-serial`}>Serial, if any</label>
      <input
        id={`${id}-serial`}
        className="run-text"
        type="text"
        autoComplete="off"
        maxLength={100}
        value={serial}
        onChange={(event) => type('serial', event.currentTarget.value)}
      />
      {chosen === undefined ? null : (
        <p className="run-card-hint">
          {[
            chosen.needsTuning ? 'After it: a new tuning run, and both ends read again.' : '',
            chosen.newBaseline ? 'Readings begin anew: a new baseline.' : '',
          ].join(' ')}{' '}
          {chosen.needsTuning || chosen.newBaseline ? chosen.basis.source : ''}
        </p>
      )}
    </ListRows>
  );
}
