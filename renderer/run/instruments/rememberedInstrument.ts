/** The instrument last used for a kind of reading on this laptop, so that it is named once and not at every box. */
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import type { InstrumentKind } from '../../../domain/vocabulary/people.ts';
import { isOutOfDate } from './instrumentChoices.ts';

type Memory = Pick<Storage, 'getItem' | 'setItem'>;

/** `chosen: null`: said to be none, in this run. `unknown`: nobody has said, and more than one would do. */
export type InHand = { readonly state: 'chosen'; readonly instrumentId: string | null } | { readonly state: 'unknown' };

export function rememberInstrument(
  memory: Memory,
  kind: InstrumentKind,
  instrumentId: string | null,
  runId: string,
): void {
  memory.setItem(memoryKey(kind), instrumentId ?? noneIn(runId));
}

/** Only an instrument of the firm counts; the single one of its kind that is in date needs no choosing. */
export function rememberedInstrument(
  memory: Memory,
  kind: InstrumentKind,
  instruments: readonly RecordedInstrument[],
  today: string,
  runId: string,
): InHand {
  const remembered = memory.getItem(memoryKey(kind));
  if (remembered === noneIn(runId)) return { state: 'chosen', instrumentId: null };
  if (instruments.some((one) => one.instrumentId === remembered)) return { state: 'chosen', instrumentId: remembered };
  const ofKind = instruments.filter((one) => one.kind === kind);
  const [only, another] = ofKind.length === 1 ? ofKind : ofKind.filter((one) => !isOutOfDate(one, today));
  return only !== undefined && another === undefined
    ? { state: 'chosen', instrumentId: only.instrumentId }
    : { state: 'unknown' };
}

/** To have had none at hand once must not leave every reading of the years to come without one. */
function noneIn(runId: string): string {
  return `none in ${runId}`;
}

function memoryKey(kind: InstrumentKind): string {
  return `lightoff.instrument.${kind}`;
}
