/** Reads one line of an old list by its columns, and says of each cell what cannot be taken. Nothing is corrected or completed. */
import { dateOrderProblems } from '../judgement/mistakes/dateOrderProblems.ts';
import type { FuelKey } from '../procedure/modelSheet.ts';
import { parseTyped } from '../quantity/parseTyped.ts';
import { foldForSearch } from '../text/foldForSearch.ts';
import { COUNTRY_NAMES } from '../vocabulary/countries.ts';
import { type ImportFieldKey, type ImportSubject, importField } from './importFields.ts';
import type {
  BuildingKind,
  ImportAppliance,
  ImportCustomer,
  ImportIssue,
  ImportIssueCode,
  ImportReading,
  ImportRow,
  ImportSite,
} from './importRow.ts';
import { readImportDay } from './readImportDay.ts';

export type ReadRow = { readonly row: ImportRow; readonly issues: readonly ImportIssue[] };

export function readImportRow(
  rowNumber: number,
  cells: readonly string[],
  columns: readonly (ImportFieldKey | null)[],
  reading: ImportReading,
): ReadRow {
  const reader = new CellReader(rowNumber, cells, columns, reading);
  const row = {
    row: rowNumber,
    customer: reader.customer(),
    site: reader.site(),
    appliance: reader.appliance(),
    service: reader.service(),
  };
  return { row, issues: reader.issues };
}

const LONGEST_LINE = 300;
const LONGEST_WORDS = 4000;

class CellReader {
  readonly issues: ImportIssue[] = [];
  readonly #row: number;
  readonly #cells: readonly string[];
  readonly #columns: ReadonlyMap<ImportFieldKey, number>;
  readonly #reading: ImportReading;

  constructor(
    row: number,
    cells: readonly string[],
    columns: readonly (ImportFieldKey | null)[],
    reading: ImportReading,
  ) {
    this.#row = row;
    this.#cells = cells;
    this.#columns = new Map(columns.flatMap((key, index) => (key === null ? [] : [[key, index] as const])));
    this.#reading = reading;
    if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell.trim() !== ''))
      this.#issue(null, 'too-many-cells', String(cells.length));
    if (cells.length < columns.length) this.#issue(null, 'too-few-cells', String(cells.length));
  }

  customer(): ImportCustomer | null {
    if (!this.#columns.has('customerName')) return null;
    const given = this.#line('givenName');
    const family = this.#needed('customerName', this.#line('customerName'));
    return {
      number: this.#line('customerNumber'),
      kind: this.#word('customerKind', PARTY_KINDS) ?? this.#reading.customerKind,
      name: [given, family].filter(Boolean).join(' '),
      contactName: this.#line('contactName'),
      language: this.#word('language', LANGUAGES),
      email: this.#email(),
      phone: this.#line('phone'),
      street: this.#line('street'),
      postcode: this.#line('postcode'),
      city: this.#line('city'),
      region: this.#line('region'),
      country: this.#word('country', COUNTRY_NAMES) ?? this.#reading.country,
      note: this.#words('customerNote'),
    };
  }

  /** A row with an appliance needs a site; one without may name a site or only a customer. */
  site(): ImportSite | null {
    if (!this.#columns.has('customerName')) return null;
    const own = this.#raw('siteStreet') !== '' || this.#raw('siteCity') !== '';
    const atCustomer = !own && this.#reading.siteAtCustomer && this.#raw('street') !== '';
    if (!own && !atCustomer) {
      if (this.#has('appliance')) this.#issue('siteStreet', 'needed', null);
      return null;
    }
    const [street, city] = own ? (['siteStreet', 'siteCity'] as const) : (['street', 'city'] as const);
    return {
      label: this.#line('siteLabel'),
      street: this.#needed(street, this.#line(street)),
      postcode: this.#line(own ? 'sitePostcode' : 'postcode'),
      city: this.#needed(city, this.#line(city)),
      region: this.#line(own ? 'siteRegion' : 'region'),
      country: this.#word(own ? 'siteCountry' : 'country', COUNTRY_NAMES) ?? this.#reading.country,
      buildingKind: this.#word('buildingKind', BUILDINGS) ?? this.#reading.buildingKind,
      access: this.#words('access'),
      altitudeM: this.#amount('altitude', 'altitudeM', this.#reading.lengthUnit),
    };
  }

  appliance(): ImportAppliance | null {
    const isLookedUp = !this.#columns.has('customerName');
    if (!isLookedUp && !this.#has('appliance') && !this.#has('service')) return null;
    const serial = this.#needed('serial', this.#line('serial'));
    const maker = this.#line('maker');
    const model = this.#line('model');
    if (!isLookedUp) {
      this.#needed('maker', maker);
      this.#needed('model', model);
    }
    const dates = (['made', 'sold', 'installed', 'started'] as const).flatMap((kind) => {
      const date = this.#day(`${kind}On`);
      return date === null ? [] : [{ kind, ...date }];
    });
    const clash = dateOrderProblems(dates, this.#reading.today).find(
      ({ isImpossible, later }) => isImpossible && later !== 'today',
    );
    if (clash !== undefined) this.#issue(null, 'dates-out-of-order', `${clash.earlier} ${clash.later}`);
    return {
      maker,
      model,
      serial,
      plateFuel: this.#word('plateFuel', FUEL_NAMES),
      ratedInputKw: this.#amount('ratedInput', 'ratedInputKw', this.#reading.powerUnit),
      position: this.#line('position'),
      note: this.#words('applianceNote'),
      dates,
    };
  }

  service(): ImportRow['service'] {
    const isNeeded = !this.#columns.has('customerName');
    if (!isNeeded && !this.#has('service')) return null;
    const date = this.#raw('servicedOn') === '' ? null : this.#day('servicedOn');
    if (date === null) {
      if (this.#raw('servicedOn') === '') this.#issue('servicedOn', 'needed', null);
      return null;
    }
    if (date.precision !== 'day') this.#issue('servicedOn', 'not-a-day', this.#raw('servicedOn'));
    return {
      on: date.on,
      by: this.#line('servicedBy'),
      invoice: this.#line('serviceInvoice'),
      note: this.#words('serviceNote'),
    };
  }

  #issue(at: ImportFieldKey | null, code: ImportIssueCode, detail: string | null): void {
    const column = at === null ? null : (this.#columns.get(at) ?? null);
    const known = this.issues.some((one) => one.column === column && one.code === code);
    if (!known) this.issues.push({ row: this.#row, column, code, detail });
  }

  #raw(key: ImportFieldKey): string {
    const index = this.#columns.get(key);
    return index === undefined ? '' : (this.#cells[index] ?? '').trim();
  }

  /** Whether any of a subject's own columns says something here. */
  #has(subject: ImportSubject): boolean {
    return [...this.#columns.keys()].some((key) => importField(key).subject === subject && this.#raw(key) !== '');
  }

  #needed(key: ImportFieldKey, text: string | null): string {
    if (text === null) this.#issue(key, 'needed', null);
    return text ?? '';
  }

  #line(key: ImportFieldKey): string | null {
    const text = this.#words(key, LONGEST_LINE);
    if (text !== null && /[\r\n]/u.test(text)) this.#issue(key, 'line-break', text);
    return text;
  }

  #words(key: ImportFieldKey, longest = LONGEST_WORDS): string | null {
    const text = this.#raw(key);
    if (text === '') return null;
    if (/^[=\uff1d]/u.test(text)) this.#issue(key, 'formula-cell', text);
    else if (SPOILED_NUMBER.test(text)) this.#issue(key, 'spoiled-number', text);
    else if (text.length > longest) this.#issue(key, 'too-long', `${text.slice(0, 40)} …`);
    return text;
  }

  #email(): string | null {
    const text = this.#line('email');
    if (text !== null && !/^[^\s@<>,;]+@[^\s@<>,;]+\.[^\s@<>,;.]{2,}$/u.test(text))
      this.#issue('email', 'not-an-email', text);
    return text;
  }

  #day(key: 'madeOn' | 'soldOn' | 'installedOn' | 'startedOn' | 'servicedOn') {
    const text = this.#words(key);
    if (text === null) return null;
    const read = readImportDay(text, this.#reading.dayOrder);
    if (!read.ok) {
      const meanings = read.error.code === 'day-month-ambiguous' ? read.error.readings.join(' / ') : null;
      this.#issue(key, read.error.code, meanings === null ? text : `${text}: ${meanings}`);
      return null;
    }
    if (read.value.on > this.#reading.today) this.#issue(key, 'day-in-future', text);
    return read.value;
  }

  #amount(key: ImportFieldKey, quantity: 'ratedInputKw' | 'altitudeM', unit: string): number | null {
    const text = this.#words(key);
    if (text === null) return null;
    const read = parseTyped(quantity, text, unit);
    if (read.ok && read.value.comparator === '=') return read.value.valueOwn;
    const code = read.ok ? 'not-a-number' : AMOUNT_ISSUES[read.error.code];
    this.#issue(key, code, text);
    return null;
  }

  #word<T extends string>(key: ImportFieldKey, words: Readonly<Record<T, readonly string[]>>): T | null {
    const text = this.#line(key);
    if (text === null) return null;
    const wanted = foldForSearch(text);
    const found = (Object.keys(words) as T[]).find(
      (word) => foldForSearch(word) === wanted || words[word].includes(wanted),
    );
    if (found === undefined) this.#issue(key, 'unknown-word', text);
    return found ?? null;
  }
}

/** What is left of a long number once a spreadsheet has shortened it: the digits are gone. */
const SPOILED_NUMBER = /^\d[.,]?\d*E\+\d+$/u;

const AMOUNT_ISSUES = {
  empty: 'needed',
  'not-a-number': 'not-a-number',
  'unknown-unit': 'not-a-number',
  'unit-of-another-kind': 'not-a-number',
  ambiguous: 'number-ambiguous',
  'beyond-possible': 'not-possible',
} as const satisfies Readonly<Record<string, ImportIssueCode>>;

const PARTY_KINDS = {
  person: ['private', 'individual', 'residential', 'home', 'particulier', 'particular', 'persona', 'personne'],
  firm: ['company', 'business', 'commercial', 'entreprise', 'societe', 'empresa'],
} as const;

const LANGUAGES = {
  en: ['english', 'anglais', 'ingles'],
  fr: ['french', 'francais', 'frances'],
  es: ['spanish', 'espagnol', 'espanol'],
} as const;

const BUILDINGS: Readonly<Record<BuildingKind, readonly string[]>> = {
  home: ['house', 'residential', 'owner occupied', 'maison', 'casa'],
  rental: ['rented', 'let', 'landlord', 'location', 'alquiler'],
  'new-build': ['new build', 'new construction', 'neuf', 'obra nueva'],
  commercial: ['business', 'office', 'shop', 'commerce', 'comercial'],
};

const FUEL_NAMES: Readonly<Record<FuelKey, readonly string[]>> = {
  'natural-gas': ['natural gas', 'ng', 'nat gas', 'gaz naturel', 'gas natural'],
  propane: ['lp', 'lpg', 'propano'],
  butane: ['butano'],
  'heating-oil': ['oil', 'heating oil', 'fuel oil', 'fioul', 'mazout', 'gasoleo'],
};
