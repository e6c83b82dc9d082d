/** The first half page: whose record, of which appliance, by whom, until when to register, and the fingerprint. */
import { VERDICTS } from '../../../../domain/judgement/finding.ts';
import { dayText, momentText, weekdayText } from '../../documentDates.ts';
import type { Block, Fact } from '../../page/blocks.ts';
import { fingerprintFigure } from '../fingerprint.ts';
import { gapText } from '../packetGapWords.ts';
import { lastOfEach, type PacketView } from '../packetView.ts';
import { KIND_WORDS, OUTCOME_WORDS, VERDICT_WORDS } from '../packetWords.ts';
import { addressText } from './addressText.ts';

const MOST_GAPS_IN_FRONT = 6;

export function titleSection(view: PacketView): readonly Block[] {
  const { record } = view;
  const { appliance, company } = record;
  const contact = [addressText(company), company.phone, company.email].filter((part) => part !== null && part !== '');
  return [
    { kind: 'paragraph', tone: 'strong', text: company.name },
    { kind: 'paragraph', tone: 'muted', text: contact.join(' · ') },
    { kind: 'heading', level: 1, text: KIND_WORDS[record.job.kind] },
    { kind: 'paragraph', tone: 'strong', text: `${appliance.maker} ${appliance.model} · serial ${appliance.serial}` },
    ...draftNotice(view),
    ...gapNotice(view),
    { kind: 'facts', facts: firstFacts(view), beside: fingerprintFigure(view.sha256, view.isSealed) },
  ];
}

function draftNotice(view: PacketView): readonly Block[] {
  if (!view.isDraft) return [];
  const lines = [
    view.isSealed
      ? 'The record behind these pages is sealed, but this packet was made as a draft.'
      : 'The record behind these pages is not sealed: it can still change.',
    'Do not send it in for a registration.',
    ...firstGaps(view),
  ];
  return [{ kind: 'notice', title: 'Draft', lines, tone: 'plain' }];
}

/** Whoever takes it in must not find out on the last page. */
function gapNotice(view: PacketView): readonly Block[] {
  const { gaps, gapReason } = view.input;
  if (view.isDraft || gaps.length === 0) return [];
  const lines = [...firstGaps(view), ...(gapReason === null ? [] : [`Made all the same, because: ${gapReason}`])];
  return [{ kind: 'notice', title: 'Not complete', lines, tone: 'plain' }];
}

function firstGaps({ input: { gaps } }: PacketView): readonly string[] {
  return [
    ...gaps.slice(0, MOST_GAPS_IN_FRONT).map((gap) => `Still open: ${gapText(gap)}`),
    ...(gaps.length > MOST_GAPS_IN_FRONT
      ? [`… and ${gaps.length - MOST_GAPS_IN_FRONT} more, listed near the end.`]
      : []),
  ];
}

function firstFacts(view: PacketView): readonly Fact[] {
  const { record, input } = view;
  const owner = record.parties.find((party) => party.roles.includes('owner'));
  const inCharge = record.people.find((person) => person.role === 'lead') ?? record.people[0];
  const { deadline, confirmedOn, number } = input.registration;
  const facts: (Fact | null)[] = [
    { label: 'Owner', value: owner?.name ?? 'not on record' },
    { label: 'Site', value: addressText(record.site) },
    {
      label: 'Visit',
      value: weekdayText(view.visitOn),
      small: record.visit.outcome === null ? 'not ended yet' : OUTCOME_WORDS[record.visit.outcome],
    },
    { label: 'In charge', value: inCharge?.name ?? 'not on record' },
    deadline && confirmedOn === null ? { label: 'Last day to register', value: weekdayText(deadline.dueOn) } : null,
    confirmedOn === null
      ? null
      : {
          label: 'Registration confirmed',
          value: dayText(confirmedOn),
          small: number === null ? null : `No. ${number}`,
        },
    {
      label: 'Model sheet',
      value: record.sheet.title,
      small: `revision ${record.sheet.revision}${record.sheet.maker === null ? '; general practice, not the maker’s own' : ''}`,
    },
    { label: 'Findings', value: findingCounts(view) },
    view.sealedAt === null
      ? { label: 'Sealed', value: 'not sealed' }
      : { label: 'Sealed', value: momentText(view.sealedAt, view.timeZone) },
    record.schema === 'lightoff.record/1' && record.seal.amends
      ? { label: 'Amendment', value: record.seal.amends.reason, small: 'The record it corrects stays in the chain.' }
      : null,
  ];
  return facts.filter((fact) => fact !== null);
}

function findingCounts(view: PacketView): string {
  const findings = lastOfEach(view.record.findings);
  const counts = VERDICTS.map((verdict) => ({
    verdict,
    count: findings.filter((finding) => finding.verdict === verdict).length,
  })).filter(({ count }) => count > 0);
  const notProven = findings.filter((finding) => !finding.proof.proven).length;
  const words = counts.map(({ verdict, count }) => `${count} ${VERDICT_WORDS[verdict].toLowerCase()}`);
  if (notProven > 0) words.push(`${notProven} not proven`);
  return words.length === 0 ? 'none' : words.join(', ');
}
