/** Serials, dates, clocks, altitudes and people. */
import { addDays } from '../aroundTheRun.ts';
import type { Dates, Party } from '../enteredSet.ts';
import type { Random } from '../random.ts';
import type { InjectedMistake } from './injectedMistake.ts';

/** Pairs that are read for one another on a plate. */
const LOOK_ALIKES: readonly (readonly [string, string])[] = [
  ['0', 'O'],
  ['1', 'I'],
  ['1', 'L'],
  ['5', 'S'],
  ['8', 'B'],
  ['2', 'Z'],
  ['6', 'G'],
];

const serialLookAlike: InjectedMistake = {
  row: 25,
  title: 'serial with look-alikes',
  inject: (set, random) => {
    const places = [...set.serial].flatMap((letter, at) =>
      LOOK_ALIKES.flatMap(([one, other]) =>
        letter === one ? [[at, other] as const] : letter === other ? [[at, one] as const] : [],
      ),
    );
    const [first, ...others] = places;
    if (first === undefined) return null;
    const [at, letter] = random.pick([first, ...others]);
    return { ...set, serial: set.serial.slice(0, at) + letter + set.serial.slice(at + 1) };
  },
  // Where the maker's pattern says which places are letters and which digits.
  isCatchable: (mistaken) => mistaken.serialPattern !== null,
};

const serialOfAnother: InjectedMistake = {
  row: 26,
  title: 'serial of another unit',
  inject: (set, random) => {
    const [one, ...others] = set.otherSerials;
    if (one === undefined) return null;
    // A unit that nobody has on file yet can't be recognised.
    const isKnown = random.chance(0.9);
    return { ...set, serial: random.pick([one, ...others]).serial, otherSerials: isKnown ? set.otherSerials : [] };
  },
  isCatchable: (mistaken) => mistaken.otherSerials.some(({ serial }) => serial === mistaken.serial),
};

const KINDS = ['made', 'sold', 'installed', 'started'] as const;

function isInOrder(dates: Dates, today: string): boolean {
  const all = [...KINDS.map((kind) => dates[kind]), today];
  return all.every((day, at) => at === 0 || (all[at - 1] ?? '') <= day);
}

function gapDays(dates: Dates): number {
  return (Date.parse(dates.started) - Date.parse(dates.made)) / 86_400_000;
}

const dayMonth: InjectedMistake = {
  row: 27,
  title: 'day and month exchanged',
  inject: (set, random) => {
    const kind = random.pick(KINDS);
    const [year = '', month = '', day = ''] = set.dates[kind].split('-');
    if (Number(day) > 12 || day === month) return null;
    if (kind === 'installed' && random.chance(0.6)) return { ...set, installedText: `${day}/${month}/${year}` };
    const dates = { ...set.dates, [kind]: `${year}-${day}-${month}` };
    return { ...set, dates, installedText: dates.installed };
  },
  // Two numbers of 12 and less between slashes are asked about; once stored, only the order of the dates can tell.
  isCatchable: (mistaken) => mistaken.installedText.includes('/') || !isInOrder(mistaken.dates, mistaken.today),
};

const wrongYear: InjectedMistake = {
  row: 28,
  title: 'wrong year',
  inject: (set, random) => {
    const kind = random.pick(KINDS);
    const [year = '', month = '', day = ''] = set.dates[kind].split('-');
    if (month === '02' && day === '29') return null;
    const dates = { ...set.dates, [kind]: `${Number(year) + random.pick([-1, 1])}-${month}-${day}` };
    return { ...set, dates, installedText: dates.installed };
  },
  // The list: out of order, or more than a year between making and starting.
  isCatchable: (mistaken) => !isInOrder(mistaken.dates, mistaken.today) || gapDays(mistaken.dates) > 366,
};

const clock: InjectedMistake = {
  row: 29,
  title: 'clock or time zone wrong',
  inject: (set, random) => ({
    ...set,
    cameraOffsetS: random.chance(0.5)
      ? random.pick([-2, -1, 1, 2, 6]) * 3600 + random.between(-100, 100)
      : random.between(120, 2400),
  }),
  // Handling a camera takes minutes; five are no other clock.
  isCatchable: (mistaken) => Math.abs(mistaken.cameraOffsetS) > 300,
};

const dateKinds: InjectedMistake = {
  row: 30,
  title: 'installed, started and moved in confused',
  inject: (set, random) => {
    const { dates } = set;
    if (random.chance(0.7)) {
      const mixed = { ...dates, installed: dates.occupied };
      return { ...set, dates: mixed, installedText: mixed.installed, today: addDays(dates.occupied, 5) };
    }
    return { ...set, dates: { ...dates, started: dates.occupied }, today: addDays(dates.occupied, 5) };
  },
  // A boiler is not started before it is in; a start taken for the day people moved in contradicts nothing.
  isCatchable: (mistaken) => mistaken.dates.installed > mistaken.dates.started,
};

const FEET_M = 0.3048;

const feetMetres: InjectedMistake = {
  row: 31,
  title: 'feet and metres of altitude',
  inject: (set, random) => ({
    ...set,
    altitudeEnteredM: random.chance(0.5) ? set.altitudeEnteredM * FEET_M : set.altitudeEnteredM / FEET_M,
  }),
  // With neighbours on file, and the slip larger than hills are.
  isCatchable: (mistaken, clean) => {
    const neighbours = mistaken.neighbourAltitudesM;
    const typical = neighbours.toSorted((one, other) => one - other)[Math.floor(neighbours.length / 2)];
    if (typical === undefined) return false;
    const off = Math.abs(mistaken.altitudeEnteredM - typical);
    const rightOff = Math.abs(clean.altitudeEnteredM - typical);
    return off > 160 && off > typical * 0.55 && off > 3.5 * rightOff;
  },
};

function anotherWayToWrite(party: Party, random: Random): Party {
  const [first = '', last = ''] = party.name.split(' ');
  const street = random.pick([
    party.street,
    party.street
      .replace('Street', 'St.')
      .replace('Road', 'Rd')
      .replace('Avenue', 'Ave')
      .replace('Lane', 'Ln')
      .replace('Drive', 'Dr'),
    oneSlip(party.street, random),
    'the yard behind the mill',
  ]);
  return {
    name: random.pick([party.name, `${last}, ${first}`, `Mr ${first} ${last}`, `${first.slice(0, 1)}. ${last}`]),
    phones: random.pick([party.phones, party.phones.map((phone) => phone.replace('+49 ', '0').replace(' ', '/')), []]),
    street,
    houseNumber: random.pick([party.houseNumber, ` ${party.houseNumber} `]),
    postcode: party.postcode,
  };
}

function oneSlip(text: string, random: Random): string {
  const at = random.whole(1, text.length - 9);
  return text.slice(0, at) + text.slice(at + 1);
}

const duplicate: InjectedMistake = {
  row: 32,
  title: 'one customer twice',
  inject: (set, random) => ({ ...set, otherParty: anotherWayToWrite(set.party, random) }),
  // A phone in common, or name and address both in common after titles, order, abbreviations and one slip are allowed for.
  isCatchable: ({ party, otherParty }) => {
    const [first = '', last = ''] = party.name.split(' ');
    const isSameName =
      !/^\w\. /.test(otherParty.name) && otherParty.name.includes(first) && otherParty.name.includes(last);
    const isSameAddress = otherParty.street !== 'the yard behind the mill';
    return (party.phones.length > 0 && otherParty.phones.length > 0) || (isSameName && isSameAddress);
  },
};

const builder: InjectedMistake = {
  row: 33,
  title: 'builder as owner',
  inject: (set, random) => ({ ...set, ownerIsBuilder: true, isNewBuild: random.chance(0.9) }),
  // Only of a house that is known to be new.
  isCatchable: (mistaken) => mistaken.isNewBuild,
};

export const DATA_MISTAKES: readonly InjectedMistake[] = [
  serialLookAlike,
  serialOfAnother,
  dayMonth,
  wrongYear,
  clock,
  dateKinds,
  feetMetres,
  duplicate,
  builder,
];
