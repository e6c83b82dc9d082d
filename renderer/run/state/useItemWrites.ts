/** The writes of one item, each answering whether it was taken; what went wrong stays for the item to show. */
import { useState } from 'react';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { InputOf } from '../../../electron/contract/index.ts';
import type { SaveState } from '../../kit/FieldSaved.tsx';
import type { SaveOutcome } from '../field/useField.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { useRun, type WriteName } from './RunContext.ts';

export type ItemRef = { readonly visitId: string; readonly runId: string } & ItemAddress;

export type ItemWrites = {
  readonly ref: ItemRef;
  readonly state: SaveState;
  readonly send: <N extends WriteName>(name: N, input: InputOf<N>) => Promise<boolean>;
  readonly answer: (value: string | null, reason: string | null, instrumentId?: string | null) => Promise<boolean>;
};

export function useItemWrites(address: ItemAddress): ItemWrites {
  const { view, write } = useRun();
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const ref: ItemRef = { visitId: view.visitId, runId: view.runId, ...address };

  const send = async <N extends WriteName>(name: N, input: InputOf<N>): Promise<boolean> => {
    setState({ kind: 'saving' });
    const reply = await write(name, input);
    setState(reply.ok ? { kind: 'saved' } : { kind: 'not-saved', why: saveErrorWords(reply.error) });
    return reply.ok;
  };
  return {
    ref,
    state,
    send,
    answer: (value, reason, instrumentId = null) => send('visits.answer', { ...ref, value, reason, instrumentId }),
  };
}

/** The same for a box that shows the outcome itself. */
export function useAnswerSave(
  address: ItemAddress,
): (value: string | null, reason: string | null, instrumentId?: string | null) => Promise<SaveOutcome> {
  const { view, write } = useRun();
  return async (value, reason, instrumentId = null) => {
    const { visitId, runId } = view;
    const reply = await write('visits.answer', { visitId, runId, ...address, value, reason, instrumentId });
    return reply.ok ? { ok: true } : { ok: false, why: saveErrorWords(reply.error) };
  };
}
