/** What a finding is about and where its demand comes from, in words. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { FINDING_NAMES } from '../../../domain/judgement/findingNames.ts';
import type { Basis, ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { StepList } from '../../../domain/procedure/progressTypes.ts';
import { isQuantityKey, type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import { isTrendQuantity, SYMPTOMS, TREND_LABELS } from '../../../domain/trend/symptoms.ts';
import { pointWords } from './pointWords.ts';
import { isSuggestionCode, suggestionQuestion } from './suggestionWords.ts';

/** `limit:coAirFreePpm@high` is “CO air-free, high fire”. */
export function subjectWords(
  finding: Pick<Finding, 'subject'>,
  sheet: Pick<ModelSheet, 'firingPoints'> & Partial<Pick<ModelSheet, StepList>>,
): string {
  const mistake = /^mistake:([^@]+)/.exec(finding.subject)?.[1];
  if (mistake !== undefined && isSuggestionCode(mistake)) return suggestionQuestion(mistake);
  const relation = /^relation:([^@]+)@(.+)$/.exec(finding.subject);
  if (relation !== null && isQuantityKey(relation[1] ?? '')) {
    return `${quantitySpec(relation[1] as QuantityKey).label}: ${relation[2]?.replace('-', ' minus ').replaceAll('-', ' ')}`;
  }
  const [, kind, moved, at] = /^(symptom|drift):([^@]+)(?:@(.+))?$/.exec(finding.subject) ?? [];
  if (kind !== undefined && moved !== undefined) {
    const where = at === undefined ? '' : `, ${pointWords(at, sheet).toLowerCase()}`;
    return `${kind === 'symptom' ? symptomLabel(moved) : `Moved since last time: ${trendLabel(moved)}`}${where}`;
  }
  const [, what = finding.subject, point] = /^(?:[a-z-]+:)?([^@]+)(?:@(.+))?$/.exec(finding.subject) ?? [];
  const name = isQuantityKey(what)
    ? quantitySpec(what).label
    : (FINDING_NAMES[what] ?? itemLabelOf(finding.subject, sheet) ?? sentence(what));
  const where = point === undefined ? '' : pointWords(point, sheet).toLowerCase();
  // “Pressure drop in the test, test” says it twice.
  return where === '' || name.toLowerCase().split(' ').includes(where) ? name : `${name}, ${where}`;
}

/** A finding may be named by the very item it is about. */
function itemLabelOf(itemKey: string, sheet: Partial<Pick<ModelSheet, StepList>>): string | undefined {
  const steps = [...(sheet.startup ?? []), ...(sheet.service ?? []), ...(sheet.repair ?? [])];
  return steps.flatMap((step) => step.items).find((item) => item.key === itemKey)?.label;
}

/** A symptom or quantity of a record made with another edition of the table still reads as words. */
export function symptomLabel(key: string): string {
  return SYMPTOMS.find((symptom) => symptom.key === key)?.label ?? sentence(key);
}

function trendLabel(key: string): string {
  return isTrendQuantity(key) ? TREND_LABELS[key] : sentence(key);
}

/** Who asks for it: `sheet (maker): table 4`, `safety ceiling: …`, `common practice: …`. */
export function basisWords(finding: Pick<Finding, 'subject' | 'basis'>): string {
  const { from, source, sheet } = finding.basis;
  const said = source === null ? '' : `: ${source.source}`;
  switch (from) {
    case 'sheet':
      return `sheet${sheet === null ? '' : ` rev. ${sheet.revision}`}${source === null ? '' : `, ${sourceWords(source)}`}`;
    case 'ceiling':
      return `safety ceiling${said}`;
    case 'physics':
      return `${finding.subject.startsWith('mistake:') ? 'cannot be as typed' : 'cannot be otherwise'}${said}`;
    case 'practice':
      return `common practice, not the maker${said}`;
    case 'none':
      return said.replace(/^: /, '');
  }
}

/** Said once: many a source of common practice begins with these very words. */
export function sourceWords({ kind, source }: Basis): string {
  return source.toLowerCase().startsWith(KINDS[kind]) ? source : `${KINDS[kind]}: ${source}`;
}

const KINDS: Record<Basis['kind'], string> = {
  maker: 'maker',
  standard: 'standard',
  'common-practice': 'common practice',
};

function sentence(key: string): string {
  const words = key
    .replaceAll('-', ' ')
    .replace(/\bco2\b/g, 'CO₂')
    .replace(/\bo2\b/g, 'O₂')
    .replace(/\bco\b/g, 'CO')
    .trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}
