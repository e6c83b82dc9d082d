/** Which instrument is in hand for each kind of reading; chosen once, remembered on this laptop. */
import { useCallback, useMemo, useState } from 'react';
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import type { InstrumentKind } from '../../../domain/vocabulary/people.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import { type InHand, rememberedInstrument, rememberInstrument } from './rememberedInstrument.ts';

export type Instruments = {
  readonly list: readonly RecordedInstrument[];
  readonly inHand: (kind: InstrumentKind | null) => InHand;
  readonly choose: (kind: InstrumentKind, instrumentId: string | null) => void;
};

export function useInstruments({ runId, record }: RunView, today: string): Instruments {
  const list = record.instruments;
  // Counts the choices made, so that every box asks the memory again.
  const [choices, setChoices] = useState(0);
  const choose = useCallback(
    (kind: InstrumentKind, instrumentId: string | null) => {
      rememberInstrument(localStorage, kind, instrumentId, runId);
      setChoices((count) => count + 1);
    },
    [runId],
  );
  return useMemo(
    () => ({
      list,
      inHand: (kind) =>
        kind === null || choices < 0
          ? { state: 'chosen', instrumentId: null }
          : rememberedInstrument(localStorage, kind, list, today, runId),
      choose,
    }),
    [list, today, runId, choose, choices],
  );
}
