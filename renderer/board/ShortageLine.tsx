/** The days shown on which two people would need the same instrument. */
import { useMemo } from 'react';
import { findShortages } from '../../domain/schedule/sharedInstruments.ts';
import { type BoardData, outingsOf } from './boardModel.ts';
import { DoubtMark } from './DoubtMark.tsx';
import { shortageWords } from './shortageWords.ts';

export function ShortageLine({ data }: { readonly data: BoardData }) {
  const shortages = useMemo(() => findShortages(outingsOf(data), data.technicians), [data]);
  if (shortages.length === 0) return null;
  const nameOf = (staffId: string) => data.technicians.find((one) => one.staffId === staffId)?.name ?? '';
  return (
    <p style={{ margin: 0, color: 'var(--lo-ochre)' }}>
      <DoubtMark /> {shortages.map((one) => shortageWords(one, nameOf)).join('; ')}.
    </p>
  );
}
