/**
 * What a finding is about, in words. The judgement names its findings `limit:coPpm@high`, `computed:clocked-input` or by
 * the key of an item; a name it has come up with since still reads as words.
 */
import { isQuantityKey } from '../../../domain/quantity/quantities.ts';
import { isTrendQuantity, SYMPTOMS, TREND_LABELS } from '../../../domain/trend/symptoms.ts';
import type { PacketView } from './packetView.ts';
import { pointText, readingLabel } from './packetWords.ts';
import { asWords, quantityLabel } from './quantityText.ts';

type Subject = { readonly subject: string; readonly formula: string | null; readonly point: string | null };

export function subjectWords(about: Subject, view: PacketView): string {
  const { kind, name, point = about.point } = parts(about.subject);
  const { firingPoints } = view.record.sheet;
  if (kind === 'relation') return about.formula === null ? quantityLabel(name) : formulaWords(about.formula, view);
  if (kind === 'symptom' || kind === 'drift') {
    const where = pointText(point, firingPoints);
    const moved = SYMPTOMS.find((symptom) => symptom.key === name)?.label ?? driftWords(name);
    return where === null ? moved : `${moved}, ${where.toLowerCase()}`;
  }
  if (isQuantityKey(name)) {
    const shown = readingLabel(name, point, firingPoints);
    // What was worked out here is not what an instrument showed.
    const words = about.formula === null ? shown : shown.replace(/ as shown\b/u, '');
    return `${words}${KIND_WORDS[kind] ?? ''}`;
  }
  const item = kind === '' ? view.itemOf(name) : undefined;
  const words = item?.label ?? NAMES[name] ?? asWords(name);
  const where = pointText(point, firingPoints);
  const full = where === null ? words : `${words}, ${where.toLowerCase()}`;
  return kind === 'mistake' ? `Possible slip: ${full.toLowerCase()}` : full;
}

/**
 * A relation's formula names its points by their keys, which may hold hyphens themselves: `Gas inlet pressure: static −
 * dynamic-all-on`. Any other formula is said as it stands.
 */
export function formulaWords(formula: string, view: PacketView): string {
  const [, label, one, other] = /^([^:]+): (\S+) − (\S+)$/u.exec(formula) ?? [];
  if (label === undefined || one === undefined || other === undefined) return formula;
  const [from, to] = [one, other].map((point) =>
    (pointText(point, view.record.sheet.firingPoints) ?? point).toLowerCase(),
  );
  return `${label}: ${from?.includes(',') ? `(${from})` : from} − ${to?.includes(',') ? `(${to})` : to}`;
}

function driftWords(name: string): string {
  return `Moved since last time: ${isTrendQuantity(name) ? TREND_LABELS[name] : asWords(name).toLowerCase()}`;
}

/** What the judgement adds to a quantity it looks at in one particular way. */
const KIND_WORDS: Readonly<Record<string, string>> = {
  zero: ', analyser zeroed',
  emitter: ', against what the emitters bear',
  default: ', as it left the works',
  worse: ', after the work against before',
};

const NAMES: Readonly<Record<string, string>> = {
  'clocked-input': 'Clocked input, gross',
  'co2-max': 'CO₂max the analyser reckons with',
  'cold-fill': 'Pressure the height needs',
  'dew-point': 'Dew point of the flue gas',
  efficiency: 'Efficiency',
  'efficiency-gross': 'Efficiency, gross',
  'efficiency-net': 'Efficiency, net',
  'excess-air': 'Excess air',
  'flue-loss': 'Flue loss',
  'hot-below-setting': 'Hot pressure below the highest setting',
  'heat-output': 'Heat given to the water',
  'inlet-drop': 'Gas pressure drop',
  'inlet-all-on': 'Gas pressure, every appliance on',
  'joints-photographed': 'Vent joints photographed',
  'smallest-zone': 'Smallest zone against the lowest fire',
  'vessel-takes': 'Water taken by the expansion vessel',
  'outdoor-sensor': 'Outdoor sensor against a thermometer',
  'flue-co-air-free': 'CO air-free',
  'flue-co-to-co2': 'CO to CO₂',
  'intake-air': 'O₂ in the intake air',
  'co-rising': 'CO rising',
  'relief-headroom': 'System pressure below the relief valve',
  'room-co': 'CO in the room',
  'room-co-everybody-out': 'CO in the room, everybody out',
  'tap-water': 'Water at the tap',
  'tap-water-scald': 'Scalding water at the tap',
  'vent-material': 'Flue gas against the vent’s material',
  'o2-co2': 'O₂ and CO₂ as a pair',
};

function parts(subject: string): { readonly kind: string; readonly name: string; readonly point?: string } {
  const [, kind = '', name = subject, point] = /^(?:([a-z-]+):)?([^@]*)(?:@(.*))?$/u.exec(subject) ?? [];
  return { kind, name, ...(point === undefined ? {} : { point }) };
}
