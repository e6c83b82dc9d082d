/** Instruments with their calibration as of the visit, photos, permits, consents and signatures. */
import { dayText, momentText } from '../../documentDates.ts';
import type { Block, Cell, Photo } from '../../page/blocks.ts';
import { calibrationOfReading, dayAtSite } from '../calibrationOfReading.ts';
import type { PacketView } from '../packetView.ts';
import type { PagePhoto } from '../photoForPdf.ts';

export function evidenceSection(view: PacketView, photos: ReadonlyMap<string, PagePhoto>): readonly Block[] {
  return [
    ...instrumentBlocks(view),
    ...photoBlocks(view, photos),
    { kind: 'heading', level: 2, text: 'Handover, consent and signatures' },
    ...consentBlocks(view),
    signatureTable(view),
    ...signaturePictures(view, photos),
  ];
}

export function instrumentBlocks(view: PacketView): readonly Block[] {
  const { readings, answers } = view.record.run;
  const used = new Set([...readings, ...answers].map(({ instrumentId }) => instrumentId ?? null));
  // The record has every instrument of the firm; evidence are those something was measured or tested with.
  const instruments = view.record.run.instruments.filter(({ instrumentId }) => used.has(instrumentId));
  if (instruments.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Instruments' },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Instrument', share: 1.6 },
        { header: 'Serial', share: 1 },
        { header: 'Calibrated', share: 1.2 },
        { header: 'Good until', share: 1.2 },
        { header: 'On the day of reading', share: 1.2 },
        { header: 'Readings', width: 42, align: 'right' },
      ],
      rows: instruments.flatMap((one) => calibrationRows(one, view)),
    },
  ];
}

/** Items of several steps may be called alike, as the analyser's at each fire: then the step says which it is. */
function photoLabel(itemKey: string, label: string, labels: readonly string[], view: PacketView): string {
  if (labels.filter((one) => one === label).length < 2) return label;
  const step = view.record.sheet.steps.find(({ items }) => items.some(({ key }) => key === itemKey));
  return step === undefined ? label : `${label}: ${step.title.toLowerCase()}`;
}

type Instrument = PacketView['record']['run']['instruments'][number];

/** A row for each calibration that readings were taken under: one made later proves nothing of what was read before it. */
function calibrationRows(one: Instrument, view: PacketView): readonly Cell[][] {
  const readings = view.record.run.readings.filter(({ instrumentId }) => instrumentId === one.instrumentId);
  if (readings.length === 0) return [calibrationRow(one, onVisitDay(one), view.visitOn, 0)];
  const byCalibration = Map.groupBy(readings, ({ measuredAt }) =>
    JSON.stringify(calibrationOfReading(one, measuredAt, view.timeZone)),
  );
  return [...byCalibration].map(([text, read]) => {
    const lastDay = read
      .map(({ measuredAt }) => dayAtSite(measuredAt, view.timeZone))
      .sort()
      .at(-1);
    return calibrationRow(one, JSON.parse(text) as Calibration, lastDay ?? view.visitOn, read.length);
  });
}

type Calibration = ReturnType<typeof calibrationOfReading>;

function onVisitDay({ calibratedOn, calibrationDueOn, certificate }: Instrument): Calibration {
  return calibratedOn === null || calibrationDueOn === null
    ? null
    : { calibratedOn, dueOn: calibrationDueOn, certificate };
}

function calibrationRow(one: Instrument, calibration: Calibration, day: string, count: number): Cell[] {
  const isInDate = calibration !== null && calibration.dueOn >= day;
  const certificate = calibration?.certificate ?? null;
  return [
    { text: one.label },
    { text: one.serial },
    {
      text: calibration === null ? 'not on record' : dayText(calibration.calibratedOn),
      small: certificate === null ? null : `certificate ${certificate}`,
    },
    { text: calibration === null ? 'not on record' : dayText(calibration.dueOn) },
    {
      text: calibration === null ? 'not known' : isInDate ? 'in date' : 'out of date',
      tone: isInDate ? 'plain' : 'strong',
    },
    { text: String(count) },
  ];
}

export function photoBlocks(view: PacketView, pictures: ReadonlyMap<string, PagePhoto>): readonly Block[] {
  const { photos } = view.record.run;
  if (photos.length === 0) return [];
  const shown: Photo[] = [];
  const notShown: string[] = [];
  const labels = photos.map(({ itemKey }) => view.itemOf(itemKey)?.label ?? itemKey);
  for (const [index, photo] of photos.entries()) {
    const label = photoLabel(photo.itemKey, labels[index] ?? photo.itemKey, labels, view);
    const picture = pictures.get(photo.sha256);
    if (picture?.kind === 'drawable') {
      const taken = momentText(photo.takenAt, view.timeZone, view.visitOn);
      const small = `${taken} · SHA-256 ${photo.sha256.slice(0, 16)}…`;
      shown.push({ sha256: photo.sha256, widthPx: picture.widthPx, heightPx: picture.heightPx, caption: label, small });
    } else {
      const why = picture === undefined ? 'its file is not at hand' : picture.why;
      notShown.push(`${label}: not shown, ${why}. SHA-256 ${photo.sha256}`);
    }
  }
  return [
    { kind: 'heading', level: 2, text: 'Photos' },
    ...(shown.length === 0 ? [] : [{ kind: 'photos', photos: shown } as const]),
    ...(notShown.length === 0 ? [] : [{ kind: 'list', items: notShown } as const]),
  ];
}

function consentBlocks(view: PacketView): readonly Block[] {
  const { parties, permits } = view.record;
  const consents = parties.flatMap((party) =>
    party.consents
      .filter(({ purpose }) => FOR_THE_MAKER.includes(purpose))
      .map(
        (consent) =>
          `${party.name} ${consent.granted ? 'agreed' : 'did not agree'} on ${dayText(consent.on)} to being written to about ${PURPOSE_WORDS[consent.purpose]} by ${consent.channel}.`,
      ),
  );
  const permitLines = permits.map(
    (permit) =>
      `Permit ${permit.number}, ${permit.issuer}: ${permit.state}${permit.on === null ? '' : ` on ${dayText(permit.on)}`}.`,
  );
  const items = [...consents, ...permitLines];
  return items.length === 0 ? [] : [{ kind: 'list', items }];
}

/** A registration carries notices of safety too; what people said to offers is none of the maker's business. */
const FOR_THE_MAKER: readonly string[] = ['registration', 'safety'];

const PURPOSE_WORDS = {
  appointments: 'appointments',
  'service-due': 'services that fall due',
  registration: 'the registration',
  offers: 'offers',
  safety: 'safety notices',
} as const;

function signaturePictures(view: PacketView, pictures: ReadonlyMap<string, PagePhoto>): readonly Block[] {
  const shown = view.record.run.signOffs.flatMap(({ signatureSha256, name, at }): Photo[] => {
    const picture = signatureSha256 === undefined ? undefined : pictures.get(signatureSha256);
    if (signatureSha256 === undefined || picture?.kind !== 'drawable') return [];
    const { widthPx, heightPx } = picture;
    const small = momentText(at, view.timeZone, view.visitOn);
    return [{ sha256: signatureSha256, widthPx, heightPx, caption: `Drawn by ${name}`, small }];
  });
  return shown.length === 0 ? [] : [{ kind: 'photos', photos: shown }];
}

function signatureTable(view: PacketView): Block {
  const { signOffs } = view.record.run;
  if (signOffs.length === 0) return { kind: 'paragraph', text: 'Nobody has signed.' };
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Signed', share: 1.8 },
      { header: 'Name', share: 1.8 },
      { header: 'As', share: 1 },
      { header: 'At', share: 1 },
    ],
    rows: signOffs.map((signOff): Cell[] => [
      { text: view.itemOf(signOff.itemKey)?.label ?? signOff.itemKey },
      { text: signOff.name },
      { text: signOff.by === 'licensed' ? 'licensed person' : 'occupant' },
      { text: momentText(signOff.at, view.timeZone, view.visitOn) },
    ]),
  };
}
