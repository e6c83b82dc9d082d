/**
 * What a finding is about, in words. The judgement names its findings `limit:coPpm@high`, `computed:clocked-input` or by
 * the key of an item; a name it has come up with since still reads as words.
 */
import { FINDING_NAMES } from '../../../domain/judgement/findingNames.ts';
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
  const words = item?.label ?? FINDING_NAMES[name] ?? asWords(name);
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

function parts(subject: string): { readonly kind: string; readonly name: string; readonly point?: string } {
  const [, kind = '', name = subject, point] = /^(?:([a-z-]+):)?([^@]*)(?:@(.*))?$/u.exec(subject) ?? [];
  return { kind, name, ...(point === undefined ? {} : { point }) };
}
