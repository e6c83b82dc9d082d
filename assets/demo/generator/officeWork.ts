/** The owner's year: agreements, two claims, one notice, and what was written to people in the last weeks. Boilers by their number in the scenario. */
import type { Temporal } from 'temporal-polyfill';
import type { Scenario } from '../../../electron/demo/scenario.ts';

type Day = Temporal.PlainDate;

/** A building manager's half-yearly ones, a yearly one, one longer than the maker allows, one that ended. */
export function agreements(anchor: Day): Scenario['agreements'] {
  const halfYearly = [7, 8, 9, 10].map((boiler) => ({
    applianceKey: `boiler-${boiler}`,
    number: 'A-2025-04',
    everyMonths: 6,
    fromOn: ago(anchor, 130),
    toOn: null,
  }));
  return [
    ...halfYearly,
    { applianceKey: 'boiler-16', number: 'A-2025-11', everyMonths: 12, fromOn: ago(anchor, 320), toOn: null },
    { applianceKey: 'boiler-22', number: 'A-2024-02', everyMonths: 24, fromOn: ago(anchor, 600), toOn: null },
    {
      applianceKey: 'boiler-33',
      number: 'A-2024-06',
      everyMonths: 6,
      fromOn: ago(anchor, 700),
      toOn: ago(anchor, 336),
    },
  ];
}

/** One granted whole; one where the parts were paid and the labour refused; one the maker has not decided. Amounts in cents. */
export function claims(anchor: Day): Scenario['claims'] {
  return [
    {
      applianceKey: 'boiler-6',
      claim: {
        partNumber: 'CQ-4410',
        partName: 'fan',
        openedOn: ago(anchor, 210),
        sentOn: ago(anchor, 208),
        partReturnedOn: ago(anchor, 205),
        claimNumber: 'QW-7731',
        decidedOn: ago(anchor, 181),
        isWithdrawn: false,
        currency: 'CAD',
        partsMinorUnits: 29_640,
        partsOutcome: 'granted',
        partsGrantedMinorUnits: 29_640,
        labourMinorUnits: 18_000,
        labourOutcome: 'granted',
        labourGrantedMinorUnits: 18_000,
        refusedBecause: null,
        note: null,
      },
    },
    {
      applianceKey: 'boiler-14',
      claim: {
        partNumber: 'CQ-5120',
        partName: 'plate heat exchanger',
        openedOn: ago(anchor, 96),
        sentOn: ago(anchor, 95),
        partReturnedOn: ago(anchor, 90),
        claimNumber: 'QW-8016',
        decidedOn: ago(anchor, 61),
        isWithdrawn: false,
        currency: 'CAD',
        partsMinorUnits: 38_500,
        partsOutcome: 'granted',
        partsGrantedMinorUnits: 38_500,
        labourMinorUnits: 75_500,
        labourOutcome: 'refused',
        labourGrantedMinorUnits: 0,
        refusedBecause: 'Labour is paid in the first two years only; see the terms of installation.',
        note: 'Startup record and both services sent with it.',
      },
    },
    {
      applianceKey: 'boiler-38',
      claim: {
        partNumber: 'CQ-3307',
        partName: 'ignition lead',
        openedOn: ago(anchor, 12),
        sentOn: ago(anchor, 11),
        partReturnedOn: null,
        claimNumber: null,
        decidedOn: null,
        isWithdrawn: false,
        currency: 'CAD',
        partsMinorUnits: 4_150,
        partsOutcome: null,
        partsGrantedMinorUnits: null,
        labourMinorUnits: 9_000,
        labourOutcome: null,
        labourGrantedMinorUnits: null,
        refusedBecause: null,
        note: null,
      },
    },
  ];
}

/** Five boilers between two serials and below a height above sea level; a sixth lies above it. */
export function recalls(anchor: Day): Scenario['recalls'] {
  return [
    {
      key: 'notice',
      recall: {
        title: 'Screw of the gas valve may work loose',
        number: 'SN-26-04',
        source: 'Quillstone, service notice',
        maker: 'Quillstone',
        models: ['Cinder 24 C'],
        serialRanges: [{ from: 'QS25C204580', to: 'QS25C204886' }],
        altitudeMinM: null,
        altitudeMaxM: 500,
        issuedOn: ago(anchor, 24),
        whatToDo:
          'Check that the screw of the gas valve is tight, mark it with paint, read CO at high fire afterwards. If you smell gas: out first, touch no switch, call from outside.',
        mayFire: false,
      },
      outcomes: [
        { applianceKey: 'boiler-10', outcome: 'done', on: ago(anchor, 9), note: 'screw was tight, marked' },
        { applianceKey: 'boiler-18', outcome: 'not-affected', on: ago(anchor, 9), note: 'valve was changed last year' },
      ],
    },
  ];
}

/** Three of last year's startups; the one in the middle lacks something. Drawn when the demo is opened, so they stay few. */
export function packetBatches(anchor: Day): Scenario['packetBatches'] {
  return [
    {
      startedAt: `${ago(anchor, 6)}T20:10:00.000Z`,
      visitKeys: [54, 52, 50].map((boiler) => `boiler-${boiler}-startup-0`),
    },
  ];
}

export function mailings(anchor: Day): Scenario['mailings'] {
  const at = (daysAgo: number): string => `${ago(anchor, daysAgo)}T14:05:00.000Z`;
  return [
    {
      recallKey: null,
      channel: 'e-mail',
      preparedAt: at(34),
      atMost: 4,
      sentOn: ago(anchor, 34),
      events: [
        { nth: 0, kind: 'answered', on: ago(anchor, 32), note: 'asks for a morning in the second half of the month' },
        { nth: 1, kind: 'bounced', on: ago(anchor, 33), note: 'mailbox unknown' },
      ],
    },
    {
      recallKey: 'notice',
      channel: 'letter',
      preparedAt: at(20),
      atMost: 10,
      sentOn: ago(anchor, 19),
      events: [
        { nth: 0, kind: 'answered', on: ago(anchor, 15), note: 'visit agreed on the phone' },
        { nth: 1, kind: 'bounced', on: ago(anchor, 12), note: 'moved away' },
      ],
    },
    {
      recallKey: null,
      channel: 'letter',
      preparedAt: at(13),
      atMost: 4,
      sentOn: ago(anchor, 12),
      events: [{ nth: 0, kind: 'answered', on: ago(anchor, 8), note: 'will call next week' }],
    },
    { recallKey: null, channel: 'text', preparedAt: at(3), atMost: 2, sentOn: null, events: [] },
  ];
}

function ago(anchor: Day, days: number): string {
  return anchor.subtract({ days }).toString();
}
