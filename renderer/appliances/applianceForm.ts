/** An appliance as a form holds it. */
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { ApplianceFields } from '../../electron/contract/appliances.ts';
import type { FormReader } from '../form/FormReader.ts';
import { showAmount, type TypedAmount, usualUnit } from '../form/typedAmount.ts';
import { FUEL_WORDS, keyOf } from '../kit/tradeWords.ts';

export type ApplianceForm = {
  readonly serial: string;
  readonly maker: string;
  readonly model: string;
  readonly sheetId: string;
  readonly plateFuel: string;
  readonly tagFuel: string;
  readonly ratedInputKw: TypedAmount;
  readonly ratedInputBasis: string;
  readonly ventKind: string;
  readonly ventLengthM: TypedAmount;
  readonly ventElbows: string;
  readonly isVentConcealed: string;
  readonly note: string;
};

/** US plates are gross, most European ones net. */
export function emptyAppliance(unitSystem: UnitSystem, jurisdiction: string): ApplianceForm {
  return {
    serial: '',
    maker: '',
    model: '',
    sheetId: '',
    plateFuel: '',
    tagFuel: '',
    ratedInputKw: { text: '', unit: usualUnit('power', unitSystem) },
    ratedInputBasis: jurisdiction === 'europe' ? 'net' : 'gross',
    ventKind: '',
    ventLengthM: { text: '', unit: usualUnit('length', unitSystem) },
    ventElbows: '',
    isVentConcealed: '',
    note: '',
  };
}

export function applianceToForm(appliance: ApplianceFields, unitSystem: UnitSystem): ApplianceForm {
  return {
    serial: appliance.serial,
    maker: appliance.maker,
    model: appliance.model,
    sheetId: appliance.sheetId ?? '',
    plateFuel: appliance.plateFuel ?? '',
    tagFuel: appliance.tagFuel ?? '',
    ratedInputKw: showAmount('power', appliance.ratedInputKw, usualUnit('power', unitSystem), 2),
    ratedInputBasis: appliance.ratedInputBasis,
    ventKind: appliance.ventKind ?? '',
    ventLengthM: showAmount('length', appliance.ventLengthM, usualUnit('length', unitSystem), 2),
    ventElbows: appliance.ventElbows === null ? '' : String(appliance.ventElbows),
    isVentConcealed: appliance.isVentConcealed === null ? '' : appliance.isVentConcealed ? 'yes' : 'no',
    note: appliance.note ?? '',
  };
}

export function applianceFromForm(form: ApplianceForm, reader: FormReader): ApplianceFields {
  return {
    serial: form.serial,
    maker: form.maker,
    model: form.model,
    sheetId: reader.optional(form.sheetId),
    plateFuel: keyOf(FUEL_WORDS, form.plateFuel),
    tagFuel: keyOf(FUEL_WORDS, form.tagFuel),
    ratedInputKw: reader.amount('ratedInputKw', form.ratedInputKw, 'power'),
    ratedInputBasis: form.ratedInputBasis === 'net' ? 'net' : 'gross',
    ventKind: reader.optional(form.ventKind),
    ventLengthM: reader.amount('ventLengthM', form.ventLengthM, 'length'),
    ventElbows: reader.whole('ventElbows', form.ventElbows),
    isVentConcealed: form.isVentConcealed === '' ? null : form.isVentConcealed === 'yes',
    note: reader.optional(form.note),
  };
}
