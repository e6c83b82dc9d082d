/** Makes the handover sheet from what stands in the run: settings, pressures, the service's day, whom to call. */
import { readDueFacts } from '../../db/dues/readDueFacts.ts';
import { findCompany } from '../../db/people.ts';
import { readRunRecord } from '../../db/runRecord.ts';
import { awaitsNativeReader, safetyWords } from '../../domain/messages/builtInWordings.ts';
import { dayInLanguage } from '../../domain/messages/dayInLanguage.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { nextService } from '../../domain/service/nextService.ts';
import { type Handover, handoverPdf } from '../documents/handover/handoverPdf.ts';
import { fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { handoverLanguage } from './handoverLanguage.ts';
import { keepMade } from './keepMade.ts';
import { loadRun } from './runState.ts';
import { dayIn } from './today.ts';

export const handoverHandlers: Handlers<'handovers.getLanguage' | 'handovers.build'> = {
  'handovers.getLanguage': (input, context) =>
    handoverLanguage(context, loadRun(context.db, input.runId).job.applianceId),

  'handovers.build': async (input, context) => {
    const { run, job } = loadRun(context.db, input.runId);
    const company = findCompany(context.db) ?? notFound('companies', 'this');
    const language = input.language ?? handoverLanguage(context, job.applianceId).language;
    const safety = safetyWords(company.emergencyNumber, language) ?? fail('emergency-number-missing', {});
    const record = readRunRecord(context.db, run, job);
    const service = nextServiceOf(context, job.applianceId);
    const day = (on: string | null): string | null => (on === null ? null : dayInLanguage(on, language));
    const bytes = await handoverPdf({
      language,
      unitSystem: company.unitSystem as UnitSystem,
      appliance: `${record.appliance.maker} ${record.appliance.model}`,
      serial: record.appliance.serial,
      startedOn: job.kind === 'startup' ? day(dayIn(company.timeZone, run.startedAt)) : null,
      safety,
      firmName: company.name,
      firmLines: [company.phone, company.email, [company.street, company.city].filter(Boolean).join(', ')].flatMap(
        (line) => (line === null || line === '' ? [] : [line]),
      ),
      country: company.country,
      serviceDueOn: day(service?.dueOn ?? null),
      serviceLatestOn: day(service?.latestOn ?? null),
      readings: standingReadings(record),
      madeAt: context.now,
    });
    const fileName = `handover-${record.appliance.serial.replaceAll(/[^A-Za-z0-9-]/g, '')}-${language}.pdf`;
    const attachmentId = keepMade(context, { bytes, mediaType: 'application/pdf', fileName, subject: 'handover' });
    return { attachmentId, fileName, language, awaitsNativeReader: awaitsNativeReader(language) };
  },
};

function nextServiceOf(context: HandlerContext, applianceId: string) {
  const [source] = readDueFacts(context.store.raw, [applianceId], context.now);
  return source === undefined ? null : nextService(source.facts);
}

function standingReadings({ readings }: RunRecord): Handover['readings'] {
  const last = (quantity: QuantityKey, point?: string): number | null =>
    readings.findLast(
      (one) => one.quantity === quantity && one.supersededById === null && (point === undefined || one.point === point),
    )?.valueOwn ?? null;
  return {
    // After the air is out is what the people will see; before it, only where that was not read again.
    coldPressureBarG: last('systemPressureBarG', 'after-purge') ?? last('systemPressureBarG', 'cold'),
    hotPressureBarG: last('systemPressureBarG', 'hot'),
    supplySetpointC: last('supplySetpointC'),
    coldestOutdoorC: last('resetDesignOutdoorC'),
    coldestSupplyC: last('resetDesignSupplyC'),
    mildOutdoorC: last('resetMildOutdoorC'),
    mildSupplyC: last('resetMildSupplyC'),
    offAboveC: last('warmWeatherShutdownC'),
    storeC: last('storeC'),
    tapC: last('mixedOutletC'),
  };
}
