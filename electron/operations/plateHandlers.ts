/** What is read from the plate in a run and belongs into the appliance's file. */
import { findAppliance } from '../../db/appliances.ts';
import { appliances } from '../../db/schema/index.ts';
import { findVisit } from '../../db/visits.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { requireOpenRun, requireVisitGoesOn } from './runGuards.ts';

export const plateHandlers: Handlers<'visits.recordPlateRating'> = {
  'visits.recordPlateRating': (input, context) => {
    const { job } = requireOpenRun(context.db, input);
    requireVisitGoesOn(findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId));
    const appliance = findAppliance(context.db, job.applianceId) ?? notFound('appliances', job.applianceId);
    // What is on file is changed in the file, where its history is: two numbers for one plate need a look.
    if (appliance.ratedInputKw !== null) return fail('rating-on-file', { ratedInputKw: appliance.ratedInputKw });
    const read = parseTyped('ratedInputKw', input.typedText, input.typedUnit);
    if (!read.ok) return fail('cannot-read', { problem: read.error });
    const { valueOwn: ratedInputKw, comparator, typedText } = read.value;
    if (comparator !== '=') return fail('cannot-read', { problem: { code: 'not-a-number', typedText } });
    context.write((writer) => writer.update(appliances, appliance.id, { ratedInputKw, ratedInputBasis: input.basis }));
    context.services.changed(['appliances', 'runs', 'visits']);
    return { ratedInputKw };
  },
};
