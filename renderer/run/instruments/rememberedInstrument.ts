/** The instrument last used for a kind of reading on this laptop, so that it is named once and not at every box. */
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import type { InstrumentKind } from './instrumentKindFor.ts';

type Memory = Pick<Storage, 'getItem' | 'setItem'>;

export function rememberInstrument(memory: Memory, kind: InstrumentKind, instrumentId: string | null): void {
  memory.setItem(memoryKey(kind), instrumentId ?? '');
}

/** Only an instrument of the run counts; the single one of its kind needs no choosing. */
export function rememberedInstrument(
  memory: Memory,
  kind: InstrumentKind,
  instruments: readonly RecordedInstrument[],
): string | null {
  const remembered = memory.getItem(memoryKey(kind));
  if (remembered !== null) {
    if (remembered === '') return null;
    if (instruments.some((one) => one.instrumentId === remembered)) return remembered;
  }
  const [only, another] = instruments.filter((one) => one.kind === kind);
  return only !== undefined && another === undefined ? only.instrumentId : null;
}

function memoryKey(kind: InstrumentKind): string {
  return `lightoff.instrument.${kind}`;
}
