/** Which instrument the readings were taken with, asked once for each kind: without one a reading is not proven. */
import { NativeSelect } from '@mantine/core';
import { instrumentKindFor } from '../../../domain/judgement/proof/instrumentKindFor.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { instrumentChoices, isOutOfDate } from '../../run/instruments/instrumentChoices.ts';
import type { Instruments } from '../../run/instruments/useInstruments.ts';

export function InstrumentChoices({
  quantities,
  instruments,
}: {
  readonly quantities: readonly QuantityKey[];
  readonly instruments: Instruments;
}) {
  const { today } = useAppStatus();
  const byKind = new Map(quantities.map((quantity) => [instrumentKindFor(quantity), quantity] as const));
  return [...byKind].map(([kind, quantity]) => {
    const choices = instrumentChoices(quantity, instruments.list);
    if (kind === null || choices.length === 0) return null;
    const inHand = instruments.inHand(kind);
    return (
      <NativeSelect
        key={kind}
        mt="xs"
        label={`Read with (${kind.replaceAll('-', ' ')})`}
        value={inHand.state === 'chosen' ? (inHand.instrumentId ?? NONE) : ''}
        data={[
          ...(inHand.state === 'unknown' ? [{ value: '', label: 'choose' }] : []),
          ...choices.map((one) => ({
            value: one.instrumentId,
            label: `${one.label} (${one.serial})${isOutOfDate(one, today) ? ', out of date' : ''}`,
          })),
          { value: NONE, label: 'none: the reading is then not proven' },
        ]}
        onChange={(event) => {
          const { value } = event.currentTarget;
          if (value !== '') instruments.choose(kind, value === NONE ? null : value);
        }}
      />
    );
  });
}

const NONE = 'none';
