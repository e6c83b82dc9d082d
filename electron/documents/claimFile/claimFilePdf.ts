/**
 * One file for a claim: what stands where, the claim itself, the maker's stated conditions and what evidences them, the
 * service history, who held which licence, and of each sealed record its readings and photos. Nobody's contacts are in it:
 * the house may have changed hands since.
 */
import { blocksPdf } from '../blocksPdf.ts';
import { dayText } from '../documentDates.ts';
import type { PacketInput, ServiceProof } from '../packet/packetInput.ts';
import { type PacketView, packetView } from '../packet/packetView.ts';
import { CREW_WORDS, KIND_WORDS } from '../packet/packetWords.ts';
import { type PagePhoto, photoForPdf } from '../packet/photoForPdf.ts';
import { attentionSection } from '../packet/sections/attentionSection.ts';
import { combustionSection } from '../packet/sections/combustionSection.ts';
import { instrumentBlocks, photoBlocks } from '../packet/sections/evidenceSection.ts';
import { readingsSection } from '../packet/sections/readingsSection.ts';
import { coverBlocks } from '../packet/sections/registrationSection.ts';
import type { Block, Cell, Fact } from '../page/blocks.ts';

export type ClaimFileClaim = {
  readonly partNumber: string;
  readonly partName: string | null;
  readonly openedOn: string;
  readonly sentOn: string | null;
  readonly partReturnedOn: string | null;
  readonly claimNumber: string | null;
  readonly parts: string;
  readonly labour: string;
  readonly note: string | null;
};

export type ClaimFileInput = {
  readonly appliance: { readonly maker: string; readonly model: string; readonly serial: string };
  readonly where: string | null;
  readonly firm: { readonly name: string; readonly licenceNumber: string | null; readonly country: string };
  readonly dates: readonly {
    readonly label: string;
    readonly on: string;
    readonly precision: 'day' | 'month' | 'year';
    readonly source: string;
  }[];
  readonly registration: {
    readonly submittedOn: string | null;
    readonly confirmedOn: string | null;
    readonly number: string | null;
  };
  readonly claim: ClaimFileClaim | null;
  /** Sealed runs, the oldest first. */
  readonly records: readonly PacketInput[];
  readonly services: readonly (ServiceProof & { readonly note: string | null })[];
  readonly madeAt: string;
  readonly madeOn: string;
};

export async function claimFilePdf(input: ClaimFileInput): Promise<Uint8Array> {
  const { appliance, firm } = input;
  const views = input.records.map((record) => packetView(record));
  const photos = new Map<string, PagePhoto>();
  for (const { photos: given } of input.records) {
    for (const photo of given) photos.set(photo.sha256, photoForPdf(photo.bytes));
  }
  const images = new Map<string, Uint8Array>();
  for (const [sha256, photo] of photos) if (photo.kind === 'drawable') images.set(sha256, photo.bytes);
  const title = `${appliance.maker} ${appliance.model}, serial ${appliance.serial}: file for a claim`;
  return blocksPdf({
    blocks: claimFileBlocks(input, views, photos),
    images,
    title,
    author: firm.name,
    language: 'en',
    country: firm.country,
    madeAt: input.madeAt,
    footer: `${title} · ${firm.name} · ${dayText(input.madeOn)}`,
  });
}

export function claimFileBlocks(
  input: ClaimFileInput,
  views: readonly PacketView[],
  photos: ReadonlyMap<string, PagePhoto>,
): readonly Block[] {
  const startup = views.findLast(({ record }) => record.job.kind === 'startup') ?? views[0];
  return [
    { kind: 'heading', level: 1, text: 'File for a claim' },
    { kind: 'facts', facts: identity(input) },
    ...claimBlocks(input.claim),
    ...dateBlocks(input),
    ...(startup === undefined ? [] : coverBlocks(startup)),
    ...serviceBlocks(input),
    ...licenceBlocks(views),
    ...(views.length === 0
      ? [
          {
            kind: 'notice',
            title: 'No sealed record on file',
            lines: ['No readings are evidenced here.'],
            tone: 'plain',
          } as const,
        ]
      : views.flatMap((view) => recordBlocks(view, photos))),
  ];
}

function identity({ appliance, where, firm, registration, madeOn }: ClaimFileInput): readonly Fact[] {
  const registered =
    registration.confirmedOn === null
      ? registration.submittedOn === null
        ? 'not evidenced'
        : `sent in on ${dayText(registration.submittedOn)}, not confirmed`
      : `confirmed on ${dayText(registration.confirmedOn)}${registration.number === null ? '' : `, number ${registration.number}`}`;
  return [
    { label: 'Appliance', value: `${appliance.maker} ${appliance.model}` },
    { label: 'Serial number', value: appliance.serial },
    { label: 'Where it stands', value: where ?? 'not on record' },
    { label: 'Registration', value: registered },
    {
      label: 'From',
      value: firm.name,
      small: firm.licenceNumber === null ? null : `licence of the firm: ${firm.licenceNumber}`,
    },
    { label: 'Made on', value: dayText(madeOn) },
  ];
}

function claimBlocks(claim: ClaimFileClaim | null): readonly Block[] {
  if (claim === null) return [];
  const day = (on: string | null) => (on === null ? 'not yet' : dayText(on));
  return [
    { kind: 'heading', level: 2, text: 'The claim' },
    {
      kind: 'facts',
      facts: [
        { label: 'Part', value: claim.partNumber, small: claim.partName },
        { label: 'Claim number', value: claim.claimNumber ?? 'none yet' },
        { label: 'Opened', value: dayText(claim.openedOn) },
        { label: 'Sent', value: day(claim.sentOn) },
        { label: 'Part sent back', value: day(claim.partReturnedOn) },
        { label: 'Parts', value: claim.parts },
        { label: 'Labour', value: claim.labour },
        ...(claim.note === null ? [] : [{ label: 'Note', value: claim.note }]),
      ],
    },
  ];
}

function dateBlocks({ dates }: ClaimFileInput): readonly Block[] {
  if (dates.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Dates' },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Date', share: 1.2 },
        { header: 'Day', share: 1.2 },
        { header: 'Where it comes from', share: 2 },
      ],
      rows: dates.map(({ label, on, precision, source }): Cell[] => [
        { text: label },
        { text: dayText(on, precision) },
        { text: source },
      ]),
    },
  ];
}

function serviceBlocks({ services }: ClaimFileInput): readonly Block[] {
  return [
    { kind: 'heading', level: 2, text: 'Service history' },
    services.length === 0
      ? { kind: 'paragraph', text: 'No service is on record.' }
      : {
          kind: 'table',
          hasRowHeaders: true,
          columns: [
            { header: 'Day', share: 1.1 },
            { header: 'Firm and person', share: 1.5 },
            { header: 'Licence', share: 1 },
            { header: 'Invoice', share: 0.8 },
            { header: 'Record', share: 1.8 },
          ],
          rows: services.map((service): Cell[] => [
            { text: dayText(service.on) },
            { text: service.firm, small: service.personName },
            { text: service.licenceNumber ?? 'not evidenced' },
            { text: service.invoiceNumber ?? '–' },
            service.recordSha256 === null
              ? { text: 'no sealed record', small: service.note }
              : { text: 'sealed record', small: service.recordSha256 },
          ]),
        },
  ];
}

function licenceBlocks(views: readonly PacketView[]): readonly Block[] {
  const rows = views.flatMap((view) =>
    view.record.people.flatMap((person) =>
      person.licences.map((licence): Cell[] => [
        { text: person.name, small: `${CREW_WORDS[person.role]}, ${dayText(view.visitOn)}` },
        { text: licence.number, small: `${licence.issuer}, ${licence.place}` },
        { text: licence.licenceClass },
        { text: licence.wasValidOnVisitDay ? 'valid that day' : 'not valid that day' },
      ]),
    ),
  );
  return [
    { kind: 'heading', level: 2, text: 'Who held which licence' },
    rows.length === 0
      ? { kind: 'paragraph', text: 'No licence is on record.' }
      : {
          kind: 'table',
          hasRowHeaders: true,
          columns: [
            { header: 'Person', share: 1.4 },
            { header: 'Licence', share: 1.6 },
            { header: 'Class', share: 0.8 },
            { header: 'On the day', share: 1 },
          ],
          rows,
        },
  ];
}

function recordBlocks(view: PacketView, photos: ReadonlyMap<string, PagePhoto>): readonly Block[] {
  return [
    { kind: 'page-break' },
    { kind: 'heading', level: 1, text: `${KIND_WORDS[view.record.job.kind]}, ${dayText(view.visitOn)}` },
    { kind: 'paragraph', text: `Sealed record, fingerprint (SHA-256) ${view.sha256}`, tone: 'muted' },
    ...attentionSection(view),
    ...combustionSection(view),
    ...readingsSection(view),
    ...instrumentBlocks(view),
    ...photoBlocks(view, photos),
  ];
}
