/** The dates kept apart, the last day to register and how it came about, and the maker's stated conditions with what evidences them. */
import { COVER_DATES, type CoverDate } from '../../../../domain/procedure/modelSheet.ts';
import type { Deadline } from '../../../contract/registrations.ts';
import { dayText, weekdayText } from '../../documentDates.ts';
import type { Block, Cell } from '../../page/blocks.ts';
import type { PacketView } from '../packetView.ts';
import { BUILDING_WORDS, DATE_IN_SENTENCE, DATE_WORDS } from '../packetWords.ts';

export function registrationSection(view: PacketView): readonly Block[] {
  return [
    { kind: 'heading', level: 2, text: 'Dates and registration' },
    datesTable(view),
    ...registrationBlocks(view),
    ...coverBlocks(view),
    ...serviceBlocks(view),
  ];
}

function datesTable(view: PacketView): Block {
  const dates = new Map(view.record.appliance.dates.map((date) => [date.kind, date]));
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Date', share: 1.2 },
      { header: 'Day', share: 1.4 },
      { header: 'As exact as', share: 0.9 },
      { header: 'Where it comes from', share: 2 },
    ],
    rows: COVER_DATES.map((kind): Cell[] => {
      const date = dates.get(kind);
      if (!date)
        return [{ text: DATE_WORDS[kind] }, { text: 'not on record', tone: 'muted' }, { text: '' }, { text: '' }];
      return [
        { text: DATE_WORDS[kind] },
        { text: dayText(date.on, date.precision) },
        { text: `the ${date.precision}` },
        { text: date.source },
      ];
    }),
  };
}

/** How the last day came about, in one sentence that can be checked with a calendar. */
export function deadlineSentence(deadline: Deadline): string {
  const { window } = deadline;
  const length = 'days' in window ? count(window.days, 'day') : count(window.months, 'month');
  const from = `${DATE_IN_SENTENCE[deadline.countedFrom]}, ${dayText(deadline.countedFromOn)}`;
  const assumed = deadline.isAssumed
    ? ' The sheet names no date that is on record, so the earliest known one was taken.'
    : '';
  return `Last day to register: ${weekdayText(deadline.dueOn)}. That is ${length} from ${from}.${assumed}`;
}

function registrationBlocks(view: PacketView): readonly Block[] {
  const { registration } = view.input;
  const { cover } = view.record.sheet;
  const lines = [
    registration.deadline
      ? deadlineSentence(registration.deadline)
      : 'The last day to register is not known: the sheet states no window, or its date is not on record.',
    ...(cover ? [`The window comes from: ${cover.registration.basis.source}.`] : []),
    ...(registration.by === null
      ? []
      : [registration.by === 'office' ? 'The firm registers on the owner’s behalf.' : 'The owner registers.']),
    ...(registration.ownerConsentOn === null
      ? []
      : [`The owner consented to being registered on ${dayText(registration.ownerConsentOn)}.`]),
    ...(registration.submittedOn === null ? [] : [`Sent in on ${dayText(registration.submittedOn)}.`]),
    ...(registration.confirmedOn === null
      ? []
      : [
          `Confirmed by the maker on ${dayText(registration.confirmedOn)}${registration.number === null ? '' : `, number ${registration.number}`}.`,
        ]),
  ];
  return [
    { kind: 'heading', level: 3, text: 'Registration' },
    { kind: 'list', items: lines },
  ];
}

type Condition = { readonly stated: string; readonly evidence: string | null; readonly missing: string };

export function coverBlocks(view: PacketView): readonly Block[] {
  const { cover, maker } = view.record.sheet;
  if (!cover) return [];
  const terms: Block[] =
    cover.terms.length === 0
      ? []
      : [
          {
            kind: 'table',
            hasRowHeaders: true,
            columns: [
              { header: 'Part', share: 1.2 },
              { header: 'If registered', share: 1.2 },
              { header: 'If not registered', share: 1.2 },
              { header: 'Counted from', share: 1.6 },
            ],
            rows: cover.terms.map((term): Cell[] => [
              { text: PART_WORDS[term.part] },
              { text: count(Number(term.registeredMonths), 'month') },
              { text: count(Number(term.unregisteredMonths), 'month') },
              { text: DATE_IN_SENTENCE[term.countedFrom] },
            ]),
          },
        ];
  return [
    {
      kind: 'heading',
      level: 3,
      text: maker === null ? 'Conditions of general practice' : 'Maker’s stated conditions',
    },
    ...terms,
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Stated', share: 2 },
        { header: 'In this packet', share: 0.9 },
        { header: 'By what', share: 2 },
      ],
      rows: conditions(view).map(({ stated, evidence, missing }): Cell[] => [
        { text: stated },
        { text: evidence === null ? 'not evidenced' : 'evidenced', tone: evidence === null ? 'strong' : 'plain' },
        { text: evidence ?? missing },
      ]),
    },
    {
      kind: 'paragraph',
      tone: 'muted',
      text: 'These are the conditions as the sheet states them. What follows from them is for the maker to decide; the law of the place may give the owner more.',
    },
  ];
}

const PART_WORDS = { exchanger: 'Heat exchanger', parts: 'Parts', labour: 'Labour' } as const;

function conditions(view: PacketView): readonly Condition[] {
  const { record, input } = view;
  const { cover } = record.sheet;
  if (!cover) return [];
  const stated = cover.conditions;
  const { deadline, submittedOn } = input.registration;
  const isInTime = deadline !== null && submittedOn !== null && submittedOn <= deadline.dueOn;
  const list: Condition[] = [
    {
      stated: `Registered within ${windowText(cover.registration.window)} of ${anyDate(cover.registration.countedFrom)}`,
      evidence: isInTime && submittedOn !== null ? `sent in on ${dayText(submittedOn)}` : null,
      missing: submittedOn === null ? 'not sent in yet' : `sent in on ${dayText(submittedOn)}`,
    },
    {
      stated: `Serviced every ${count(Number(stated.serviceEveryMonths), 'month')}${stated.graceMonths === '0' ? '' : `, ${count(Number(stated.graceMonths), 'month')} either way`}, counted from ${stated.serviceCountedFrom === 'anniversary' ? 'the anniversary of the startup' : 'the last service'}`,
      evidence: input.services.length > 0 ? `${count(input.services.length, 'service')} listed below` : null,
      missing: 'no service on record yet',
    },
  ];
  if (stated.licensedInstaller) {
    const licensed = record.people.find((person) => person.licences.some((licence) => licence.wasValidOnVisitDay));
    list.push({
      stated: 'Started up by a licensed person',
      evidence: licensed ? `licence of ${licensed.name}, valid that day` : null,
      missing: 'no licence on record that was valid that day',
    });
  }
  if (stated.waterQualityRecorded) {
    const water = view.current.filter(
      (one) => ['waterPh', 'hardnessMmolPerL', 'conductivityUsPerCm'].includes(one.quantity) && one.valueOwn !== null,
    );
    list.push({
      stated: 'Water quality recorded',
      evidence: water.length > 0 ? `${count(water.length, 'water reading')} in this record` : null,
      missing: 'no water reading in this record',
    });
  }
  if (stated.originalOwner) {
    const owner = record.parties.find((party) => party.roles.includes('owner'));
    list.push({
      stated: 'For the first owner',
      evidence: owner ? `owner at the startup: ${owner.name}` : null,
      missing: 'no owner on record',
    });
  }
  if (stated.use !== 'any') {
    const isHome = record.site.buildingKind !== 'commercial';
    list.push({
      stated: stated.use === 'home' ? 'For use in a home' : 'For commercial use',
      evidence:
        isHome === (stated.use === 'home')
          ? `building: ${BUILDING_WORDS[record.site.buildingKind].toLowerCase()}`
          : null,
      missing: `building: ${BUILDING_WORDS[record.site.buildingKind].toLowerCase()}`,
    });
  }
  return list;
}

function serviceBlocks(view: PacketView): readonly Block[] {
  const { services } = view.input;
  if (services.length === 0) return [];
  return [
    { kind: 'heading', level: 3, text: 'Services since' },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Day', share: 1.2 },
        { header: 'Firm and person', share: 1.6 },
        { header: 'Licence', share: 1 },
        { header: 'Fingerprint of its record', share: 2 },
        { header: 'Invoice', share: 0.8 },
      ],
      rows: services.map((service): Cell[] => [
        { text: dayText(service.on) },
        { text: service.firm, small: service.personName },
        { text: service.licenceNumber ?? 'not evidenced' },
        { text: service.recordSha256 ?? 'not evidenced' },
        { text: service.invoiceNumber ?? '–' },
      ]),
    },
  ];
}

function windowText(window: { readonly days: string } | { readonly months: string }): string {
  return 'days' in window ? count(Number(window.days), 'day') : count(Number(window.months), 'month');
}

function anyDate(kind: CoverDate | 'earliest'): string {
  return kind === 'earliest' ? 'the earliest date' : DATE_IN_SENTENCE[kind];
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
