/** How the gas was isolated, the label, who was told: each line saved when it is left. */
import { useEffect, useId, useRef, useState } from 'react';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { useKept } from '../../kit/useKept.ts';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import type { MakeSafe } from './useMakeSafes.ts';

type Lines = {
  readonly isolatedHow: string;
  readonly labelNumber: string;
  readonly toldWhom: string;
  readonly deliveredHow: string;
  readonly isRefused: boolean;
};

const LINES = [
  ['isolatedHow', 'Gas isolated how'],
  ['labelNumber', 'Label number'],
  ['toldWhom', 'Who was told'],
  ['deliveredHow', 'How the notice was given'],
] as const;

export function MakeSafeForm({ makeSafe }: { readonly makeSafe: MakeSafe }) {
  const { write } = useRun();
  const { company } = useAppStatus();
  const id = useId();
  const form = useRef<HTMLFormElement>(null);
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const [saved, setSaved] = useState<Lines>({
    isolatedHow: makeSafe.isolatedHow ?? '',
    labelNumber: makeSafe.labelNumber ?? '',
    toldWhom: makeSafe.toldWhom ?? '',
    deliveredHow: makeSafe.deliveredHow ?? '',
    isRefused: makeSafe.isRefused,
  });
  // What is being typed outlives a reload in the middle of a line.
  const [typed, keepTyped] = useKept(`make-safe.${makeSafe.makeSafeId}`, '');
  const lines: Lines = typed === '' ? saved : { ...saved, ...(JSON.parse(typed) as Partial<Lines>) };
  const latestTyped = useRef(typed);
  const setLines = (next: Lines) => {
    latestTyped.current = JSON.stringify(next);
    keepTyped(latestTyped.current);
  };
  // The record is open already: the first line has the keyboard as soon as it is there.
  useEffect(() => form.current?.querySelector('input')?.focus(), []);

  const save = async (next: Lines) => {
    if (JSON.stringify(next) === JSON.stringify(saved)) return;
    setState({ kind: 'saving' });
    const reply = await write('makeSafes.describe', {
      makeSafeId: makeSafe.makeSafeId,
      isolatedHow: next.isolatedHow.trim() || null,
      labelNumber: next.labelNumber.trim() || null,
      toldWhom: next.toldWhom.trim() || null,
      deliveredHow: next.deliveredHow.trim() || null,
      isRefused: next.isRefused,
    });
    if (reply.ok) {
      setSaved(next);
      // Typed on meanwhile: that is saved when its own line is left.
      if (latestTyped.current === JSON.stringify(next)) keepTyped('');
    }
    setState(reply.ok ? { kind: 'saved' } : { kind: 'not-saved', why: saveErrorWords(reply.error) });
  };
  return (
    <form
      ref={form}
      className="run-make-safe"
      onSubmit={(event) => {
        event.preventDefault();
        void save(lines);
        const boxes: (Element | null)[] = [...(form.current?.querySelectorAll('input[type="text"]') ?? [])];
        const next = boxes[boxes.indexOf(document.activeElement) + 1];
        // After the last line its "saved" comes into view with the button it stands beside.
        const button = form.current?.querySelector<HTMLElement>('button[type="submit"]');
        if (next instanceof HTMLElement) next.focus();
        else button?.focus();
      }}
    >
      {LINES.map(([name, label]) => (
        <div key={name} className="run-make-safe-line">
          <label htmlFor={`${id}-${name}`}>{label}</label>
          <input
            id={`${id}-${name}`}
            className="run-text"
            data-wide
            type="text"
            autoComplete="off"
            maxLength={300}
            value={lines[name]}
            onChange={(event) => setLines({ ...lines, [name]: event.currentTarget.value })}
            onBlur={() => void save(lines)}
          />
        </div>
      ))}
      <label className="run-check">
        <input
          type="checkbox"
          checked={lines.isRefused}
          onChange={(event) => {
            const next = { ...lines, isRefused: event.currentTarget.checked };
            setLines(next);
            void save(next);
          }}
        />
        The occupant refuses isolation: call the gas emergency line
        {company?.emergencyNumber == null ? '' : `, ${company.emergencyNumber}`}
      </label>
      <div className="run-box-row">
        <button type="submit" className="run-button">
          Save
        </button>
        <FieldSaved state={state} />
      </div>
    </form>
  );
}
