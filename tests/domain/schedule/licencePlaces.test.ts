import { describe, expect, it } from 'vitest';
import { type HeldLicence, licencePlacesElsewhere } from '../../../domain/schedule/gasLicence.ts';

const ON = '2026-03-02';
const WORK = { on: ON, fuel: null, ratedInputKw: 25, region: 'Ontario', country: null } as const;

describe('licencePlacesElsewhere', () => {
  it('should name the place of a licence that is not the site’s', () => {
    expect(licencePlacesElsewhere([licence('Nova Scotia')], WORK)).toEqual(['Nova Scotia']);
  });

  it('should be silent where one licence names the place, however it is written', () => {
    expect(licencePlacesElsewhere([licence('Nova Scotia'), licence(' ONTARIO ')], WORK)).toEqual([]);
    expect(licencePlacesElsewhere([licence('Quebec')], { ...WORK, region: 'Québec' })).toEqual([]);
  });

  it.each([
    ['NS', 'Nova Scotia'],
    ['nova scotia', 'NS'],
    ['CA-NS', 'Nova Scotia'],
    ['Québec', 'QC'],
    ['FL', 'Florida'],
  ])('raises no false alarm: a licence for %s, the site in %s', (place, region) => {
    expect(licencePlacesElsewhere([licence(place)], { ...WORK, region })).toEqual([]);
  });

  it.each([
    ['BC', 'Nova Scotia'],
    ['British Columbia', 'NS'],
    ['Ontario', 'NY'],
    ['CA', 'NV'],
  ])('should ask about a licence for %s where the site is in %s', (place, region) => {
    expect(licencePlacesElsewhere([licence(place)], { ...WORK, region })).toEqual([place]);
  });

  it.each([
    ['Canada', 'Ontario'],
    ['CA', 'Ontario'],
    ['Ontario', 'Invented County'],
    ['Invented County', 'Ontario'],
    ['Ontario, Quebec', 'BC'],
    ['Bavaria', 'Hesse'],
  ])('should be silent where a place is no state or province of the list: %s, %s', (place, region) => {
    expect(licencePlacesElsewhere([licence(place)], { ...WORK, region })).toEqual([]);
  });

  it.each([
    ['a whole country, the site’s', 'Canada', 'Ontario', 'CA'],
    ['a whole country by its code', 'CA', null, 'CA'],
    ['the code of a country that is a state’s as well', 'DE', 'Hesse', 'DE'],
    ['its own state by a code that another country has too', 'WA', 'WA', 'AU'],
    ['another state by a code that another country has too', 'NT', 'WA', 'AU'],
    ['a state, the site’s being unknown', 'Ontario', null, 'CA'],
  ])('raises no false alarm over %s: %s beside %s, %s', (_what, place, region, country) => {
    expect(licencePlacesElsewhere([licence(place)], { ...WORK, region, country })).toEqual([]);
  });

  it.each([
    ['another country', 'United States', 'Ontario', 'CA'],
    ['another country, the site’s state being unknown', 'USA', null, 'CA'],
    ['a state of another country', 'New York', null, 'CA'],
    ['a state of the same code in another country', 'US-WA', 'WA', 'AU'],
    ['a state of the same name’s code in another country', 'Washington', 'WA', 'AU'],
    ['a province, where the site’s country has no list', 'Ontario', 'Hesse', 'DE'],
    ['another country, both outside the list of states', 'France', 'Hesse', 'DE'],
    ['a code that is a state’s of this country', 'CA', 'NV', 'US'],
  ])('should ask about a licence for %s: %s beside %s, %s', (_what, place, region, country) => {
    expect(licencePlacesElsewhere([licence(place)], { ...WORK, region, country })).toEqual([place]);
  });

  it('should name a place once that two licences write differently', () => {
    expect(licencePlacesElsewhere([licence('NS'), licence('Nova Scotia')], WORK)).toEqual(['NS']);
  });

  it('should not guess where either place is not known', () => {
    expect(licencePlacesElsewhere([licence('Nova Scotia')], { ...WORK, region: null })).toEqual([]);
    expect(licencePlacesElsewhere([licence('Nova Scotia')], { ...WORK, region: ' ' })).toEqual([]);
    expect(licencePlacesElsewhere([licence(null)], WORK)).toEqual([]);
  });

  it('should look only at licences that cover the work on that day', () => {
    const old = { ...licence('Ontario'), validTo: '2026-01-01' };
    expect(licencePlacesElsewhere([old, licence('Nova Scotia')], WORK)).toEqual(['Nova Scotia']);
    expect(licencePlacesElsewhere([old], WORK)).toEqual([]);
  });
});

function licence(place: string | null): HeldLicence {
  return { fuel: null, maxKw: null, validFrom: '2025-01-01', validTo: '2027-01-01', place };
}
