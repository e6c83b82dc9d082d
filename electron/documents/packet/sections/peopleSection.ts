/** Who owns, lives in, built, supplied and started it, with the licences as they stood on the day of the visit. */
import { foldForSearch } from '../../../../domain/text/foldForSearch.ts';
import { dayText } from '../../documentDates.ts';
import type { Block, Cell } from '../../page/blocks.ts';
import type { PacketView } from '../packetView.ts';
import { CREW_WORDS, FUEL_WORDS, ROLE_WORDS } from '../packetWords.ts';
import { addressText } from './addressText.ts';
import { inUnits } from './applianceSection.ts';

export function peopleSection(view: PacketView): readonly Block[] {
  const { parties, company, people, site } = view.record;
  const firm: Cell[] = [
    { text: 'Firm' },
    { text: company.name },
    { text: [company.phone, company.email].filter(Boolean).join('\n') },
    { text: addressText(company) },
  ];
  return [
    { kind: 'heading', level: 2, text: 'People and firms' },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Role', share: 0.9 },
        { header: 'Name', share: 1.4 },
        { header: 'Phone and e-mail', share: 1.8 },
        { header: 'Address', share: 1.7 },
      ],
      rows: [
        ...parties.map((party): Cell[] => [
          { text: party.roles.map((role) => ROLE_WORDS[role]).join(', ') || 'Party' },
          { text: party.name, small: party.contactName },
          { text: [party.phone, party.email].filter(Boolean).join('\n') || '–' },
          { text: addressText(party), small: isSameAddress(party, site) ? 'same as the site' : null },
        ]),
        firm,
      ],
    },
    { kind: 'heading', level: 3, text: `On site, licences as of ${dayText(view.visitOn)}` },
    licenceTable(view, people),
    ...trainings(view, people),
    ...(company.licenceNumber === null
      ? []
      : [{ kind: 'paragraph', text: `Licence of the firm: ${company.licenceNumber}` } as const]),
  ];
}

type People = PacketView['record']['people'];

function licenceTable(view: PacketView, people: People): Block {
  const rows = people.flatMap((person): Cell[][] => {
    const who: Cell = { text: person.name, small: CREW_WORDS[person.role] };
    if (person.licences.length === 0)
      return [[who, { text: 'none on record' }, { text: '–' }, { text: '–' }, { text: '–' }]];
    return person.licences.map((licence) => [
      who,
      { text: licence.number, small: `${licence.issuer}, ${licence.place}` },
      { text: licence.licenceClass },
      {
        text: licence.fuel === null ? 'every fuel' : FUEL_WORDS[licence.fuel],
        small: licence.maxKw === null ? null : `up to ${inUnits(view, 'ratedInputKw', licence.maxKw)}`,
      },
      {
        text: licence.wasValidOnVisitDay ? 'valid that day' : 'not valid that day',
        tone: licence.wasValidOnVisitDay ? 'plain' : 'strong',
        small: `${dayText(licence.validFrom)} to ${dayText(licence.validTo)}`,
      },
    ]);
  });
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Person', share: 1.5 },
      { header: 'Licence', share: 1.6 },
      { header: 'Class', share: 1.1 },
      { header: 'Fuel and size', share: 1.1 },
      { header: 'Validity', share: 1.3 },
    ],
    rows,
  };
}

/** Those by this appliance's maker, not more: what somebody learned of other makers is not this one's business. */
function trainings(view: PacketView, people: People): readonly Block[] {
  const maker = foldForSearch(view.record.appliance.maker);
  return people.flatMap((person) =>
    person.trainings
      .filter((training) => foldForSearch(training.maker) === maker)
      .map((training) => ({
        kind: 'paragraph' as const,
        text: `${person.name} was trained on ${training.maker} ${training.modelLine}${training.number === null ? '' : `, no. ${training.number}`}, from ${dayText(training.validFrom)}${training.validTo === null ? '' : ` to ${dayText(training.validTo)}`}.`,
      })),
  );
}

function isSameAddress(
  one: { readonly street: string | null; readonly city: string | null },
  other: { readonly street: string | null; readonly city: string | null },
): boolean {
  return one.street !== null && one.street === other.street && one.city === other.city;
}
