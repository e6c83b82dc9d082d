/** What each customer said about being written to: by purpose and channel, with the day and how it is known; some never asked, some changed their mind. */
import type { Temporal } from 'temporal-polyfill';
import type { Scenario } from '../../../electron/demo/scenario.ts';

type Consents = Scenario['customers'][number]['consents'];
type Said = Omit<Consents[number], 'on'> & { readonly daysAfter: number };

/** In the order they were said; nothing later than a month before the anchor. */
export function consentsOf(index: number, since: Temporal.PlainDate, anchor: Temporal.PlainDate): Consents {
  const newest = anchor.subtract({ days: 30 + index });
  return [...registration(index), ...services(index), ...others(index)].map(({ daysAfter, ...said }) => {
    const on = since.add({ days: daysAfter });
    return { ...said, on: (on.until(newest).sign < 0 ? newest : on).toString() };
  });
}

function registration(index: number): readonly Said[] {
  if (index % 4 === 0) return [];
  return [
    {
      purpose: 'registration',
      channel: hasNoEmail(index) ? 'letter' : 'e-mail',
      granted: true,
      source: 'order form',
      daysAfter: 0,
    },
  ];
}

/** One in six gave none; whose boiler the demo starts up did. */
export function hasNoEmail(index: number): boolean {
  return index % 6 === 5 && index < 30;
}

function services(index: number): readonly Said[] {
  const purpose = 'service-due';
  switch (index % 6) {
    case 0:
      return [{ purpose, channel: 'e-mail', granted: true, source: 'asked at handover', daysAfter: 40 }];
    case 1:
      return [{ purpose, channel: 'letter', granted: true, source: 'order form', daysAfter: 0 }];
    case 2:
      return [
        { purpose, channel: 'e-mail', granted: true, source: 'order form', daysAfter: 0 },
        { purpose, channel: 'e-mail', granted: false, source: 'their e-mail: a call is enough', daysAfter: 380 },
        { purpose, channel: 'phone', granted: true, source: 'their e-mail: a call is enough', daysAfter: 380 },
      ];
    case 3:
      return [
        { purpose, channel: 'letter', granted: true, source: 'signed form at handover', daysAfter: 41 },
        { purpose, channel: 'text', granted: true, source: 'on the phone', daysAfter: 395 },
      ];
    case 4:
      return [
        { purpose, channel: 'e-mail', granted: true, source: 'order form', daysAfter: 0 },
        { purpose, channel: 'letter', granted: true, source: 'order form', daysAfter: 0 },
      ];
    default:
      return [];
  }
}

function others(index: number): readonly Said[] {
  const said: Said[] = [];
  if (index % 5 === 1)
    said.push({ purpose: 'appointments', channel: 'text', granted: true, source: 'on the phone', daysAfter: 20 });
  if (index % 9 === 5)
    said.push({ purpose: 'appointments', channel: 'e-mail', granted: false, source: 'on the phone', daysAfter: 60 });
  if (index % 3 === 0)
    said.push({
      purpose: 'offers',
      channel: 'e-mail',
      granted: false,
      source: 'order form, box left empty',
      daysAfter: 0,
    });
  if (index % 7 === 2)
    said.push({
      purpose: 'offers',
      channel: 'letter',
      granted: true,
      source: 'signed form at handover',
      daysAfter: 41,
    });
  if (index % 8 === 6)
    said.push({ purpose: 'safety', channel: 'phone', granted: true, source: 'asked at handover', daysAfter: 40 });
  return said;
}
