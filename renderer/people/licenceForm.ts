/** A licence as a form holds it. */
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { Licence } from '../../electron/contract/people.ts';
import type { FormReader } from '../form/FormReader.ts';
import { showAmount, type TypedAmount, usualUnit } from '../form/typedAmount.ts';
import { dayWords } from '../kit/dayWords.ts';
import { FUEL_WORDS, keyOf } from '../kit/tradeWords.ts';

export type LicenceForm = {
  readonly number: string;
  readonly issuer: string;
  readonly place: string;
  readonly licenceClass: string;
  readonly fuel: string;
  readonly maxKw: TypedAmount;
  readonly validFrom: string;
  readonly validTo: string;
};

export function emptyLicence(unitSystem: UnitSystem): LicenceForm {
  return {
    number: '',
    issuer: '',
    place: '',
    licenceClass: '',
    fuel: '',
    maxKw: { text: '', unit: usualUnit('power', unitSystem) },
    validFrom: '',
    validTo: '',
  };
}

export function licenceToForm(licence: Licence, unitSystem: UnitSystem): LicenceForm {
  return {
    number: licence.number,
    issuer: licence.issuer,
    place: licence.place,
    licenceClass: licence.licenceClass,
    fuel: licence.fuel ?? '',
    maxKw: showAmount('power', licence.maxKw, usualUnit('power', unitSystem), 2),
    validFrom: dayWords(licence.validFrom),
    validTo: dayWords(licence.validTo),
  };
}

export function licenceFromForm(form: LicenceForm, reader: FormReader): Omit<Licence, 'licenceId' | 'endReason'> {
  return {
    number: form.number,
    issuer: form.issuer,
    place: form.place,
    licenceClass: form.licenceClass,
    fuel: keyOf(FUEL_WORDS, form.fuel),
    maxKw: reader.amount('maxKw', form.maxKw, 'power'),
    validFrom: reader.neededDay('validFrom', form.validFrom),
    validTo: reader.neededDay('validTo', form.validTo),
  };
}
