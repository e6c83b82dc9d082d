/** What a formula was fed with, in words: a quantity by its label, anything else by its name with the unit its name ends in. */
import { isQuantityKey } from '../../../domain/quantity/quantities.ts';
import { decimalText } from '../../sealing/decimalText.ts';
import { dayText } from '../documentDates.ts';
import type { PacketView } from './packetView.ts';
import { pointText } from './packetWords.ts';
import { asWords, quantityLabel, valueText, withUnit } from './quantityText.ts';

export function inputsText(inputs: Readonly<Record<string, string>>, firingPoints: FiringPoints): string {
  const names = Object.keys(inputs).map(nameOf);
  return (
    Object.entries(inputs)
      // Ids of readings are for programs.
      .filter(([key]) => !key.endsWith('.reading') && key !== 'reading')
      .map(([key, value]) => {
        // The same quantity at two points is told apart by them.
        const isTwice = names.filter((name) => name === nameOf(key)).length > 1;
        const point = isTwice ? pointText(pointOf(key), firingPoints) : null;
        return `${inputText(key, value)}${point === null ? '' : ` (${point.toLowerCase()})`}`;
      })
      .join(', ')
  );
}

type FiringPoints = PacketView['record']['sheet']['firingPoints'];

function nameOf(key: string): string {
  return key.replace(/[@#].*$/u, '');
}

function pointOf(key: string): string | null {
  return /@([^#]+)/u.exec(key)?.[1] ?? null;
}

/** A key may name the point and the sample after the quantity: `coPpm@high#2`. */
function inputText(key: string, value: string): string {
  const name = nameOf(key);
  if (!decimalText.safeParse(value).success) {
    return `${asWords(name)} ${/^\d{4}-\d{2}-\d{2}$/u.test(value) ? dayText(value) : value}`;
  }
  if (isQuantityKey(name)) return `${quantityLabel(name)} ${withUnit(valueText(name, value, 'metric'))}`;
  const ending = UNIT_ENDINGS.find(([text]) => name.endsWith(text) && name.length > text.length);
  const number = shortNumber(value, ending?.[1] === '%').replace('-', '\u2212');
  if (!ending) return `${asWords(name)} ${number}`;
  return `${asWords(name.slice(0, -ending[0].length))} ${number}\u00a0${ending[1]}`;
}

/** As the names of quantities end; longer endings first. */
const UNIT_ENDINGS = [
  ['KpaAbs', 'kPa abs'],
  ['MbarG', 'mbar'],
  ['BarG', 'bar'],
  ['Mbar', 'mbar'],
  ['Bar', 'bar'],
  ['Pct', '%'],
  ['Ppm', 'ppm'],
  ['Kw', 'kW'],
  ['Ft', 'ft'],
  ['C', '°C'],
  ['K', 'K'],
  ['M', 'm'],
  ['S', 's'],
] as const;

/** Four figures, and no more than thousandths or tenths of a per cent, are what an instrument gives; the record has all of them. */
function shortNumber(value: string, isShare: boolean): string {
  const number = Number(value);
  const short = Math.abs(number) >= 1000 ? Math.round(number) : Number(number.toPrecision(4));
  const decimals = isShare ? 1 : 3;
  return String(Math.abs(short) < 10 ** -decimals ? short : Number(short.toFixed(decimals)));
}
