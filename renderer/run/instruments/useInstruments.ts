/** Which instrument is in hand for each kind of reading; chosen once, remembered on this laptop. */
import { useCallback, useMemo, useState } from 'react';
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import type { InstrumentKind } from './instrumentKindFor.ts';
import { rememberedInstrument, rememberInstrument } from './rememberedInstrument.ts';

export type Instruments = {
  readonly list: readonly RecordedInstrument[];
  readonly inHand: (kind: InstrumentKind | null) => string | null;
  readonly choose: (kind: InstrumentKind, instrumentId: string | null) => void;
};

export function useInstruments(list: readonly RecordedInstrument[]): Instruments {
  const [changes, setChanges] = useState(0);
  const choose = useCallback((kind: InstrumentKind, instrumentId: string | null) => {
    rememberInstrument(localStorage, kind, instrumentId);
    setChanges((count) => count + 1);
  }, []);
  return useMemo(
    () => ({
      list,
      inHand: (kind) => (kind === null || changes < 0 ? null : rememberedInstrument(localStorage, kind, list)),
      choose,
    }),
    [list, choose, changes],
  );
}
