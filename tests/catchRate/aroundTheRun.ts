/** Serials, dates, clocks, neighbours and people around a run: what the checks across jobs look at. All names invented. */
import type { Dates, EnteredSet, Party } from './enteredSet.ts';
import type { Random } from './random.ts';
import type { TrueSite } from './trueSite.ts';

type Around = Pick<
  EnteredSet,
  | 'serial'
  | 'serialPattern'
  | 'otherSerials'
  | 'dates'
  | 'installedText'
  | 'today'
  | 'cameraOffsetS'
  | 'altitudeEnteredM'
  | 'neighbourAltitudesM'
  | 'party'
  | 'otherParty'
  | 'isNewBuild'
  | 'ownerIsBuilder'
  | 'lastJob'
>;

export function aroundTheRun(site: TrueSite, random: Random): Around {
  const dates = datesOf(random);
  const party = partyOf(random);
  const isNewBuild = random.chance(0.4);
  return {
    serial: serialOf(random),
    serialPattern: random.chance(0.8) ? '^[A-Z]{2}\\d{7}$' : null,
    otherSerials: [
      { serial: serialOf(random), isOnSameSite: random.chance(0.3) },
      { serial: serialOf(random), isOnSameSite: false },
    ],
    dates,
    installedText: dates.installed,
    today: addDays(dates.started, random.whole(0, 20)),
    cameraOffsetS: random.between(-150, 150),
    altitudeEnteredM: Math.round(site.altitudeM),
    // Jobs of one postcode lie within some tens of metres, more in the hills.
    neighbourAltitudesM: Array.from({ length: random.whole(0, 5) }, () =>
      Math.round(site.altitudeM + random.error(40 + site.altitudeM * 0.08)),
    ),
    party,
    otherParty: partyOf(random),
    isNewBuild,
    ownerIsBuilder: false,
    lastJob: lastJob(random),
  };
}

function serialOf(random: Random): string {
  const letters = 'ACEFHJKMNPRTUVWXYBDGILOQSZ';
  const letter = () => letters[random.whole(0, letters.length - 1)] ?? 'A';
  return `${letter()}${letter()}${String(random.whole(1_000_000, 9_999_999))}`;
}

function datesOf(random: Random): Dates {
  const started = addDays('2025-01-01', random.whole(0, 640));
  const installed = addDays(started, -random.whole(0, 25));
  const sold = addDays(installed, -random.whole(3, 60));
  const made = addDays(sold, -random.whole(10, 200));
  return { made, sold, installed, started, occupied: addDays(started, random.whole(1, 60)) };
}

export function addDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

const FIRST = ['Anna', 'Piet', 'Marta', 'Olek', 'Ines', 'Bruno', 'Sanne', 'Ravi', 'Elin', 'Tomas'] as const;
const LAST = [
  'Quarrymoor',
  'Feldhaven',
  'Osterlund',
  'Brackwater',
  'Timmerhal',
  'Vallonde',
  'Sundquister',
  'Ashgrove',
] as const;
const STREETS = [
  'Harbour Street',
  'Millpond Road',
  'Larch Avenue',
  'Beacon Lane',
  'Quarry Drive',
  'Saltmarsh Street',
  'Orchard Road',
] as const;

function partyOf(random: Random): Party {
  return {
    name: `${random.pick(FIRST)} ${random.pick(LAST)}`,
    phones: random.chance(0.85) ? [`+49 ${random.whole(150, 179)} ${random.whole(1_000_000, 9_999_999)}`] : [],
    street: random.pick(STREETS),
    houseNumber: String(random.whole(1, 180)),
    postcode: String(random.whole(10_000, 99_999)),
  };
}

function lastJob(random: Random): Readonly<Record<string, number>> {
  return {
    'o2DryVolPct@high': Number(random.between(3.9, 6.5).toFixed(1)),
    'co2DryVolPct@high': Number(random.between(8.4, 10.6).toFixed(1)),
    'coPpm@high': random.whole(10, 150),
    'flueGasC@high': Number(random.between(35, 80).toFixed(1)),
  };
}
