/** One person's data given out, and a person erased. */
import { findParty } from '../../../db/customers.ts';
import { erasePerson, scrubStore } from '../../../db/persons/erasePerson.ts';
import { listPersonFiles } from '../../../db/persons/personFiles.ts';
import { personHolds } from '../../../db/persons/personHolds.ts';
import { listPersonRows } from '../../../db/persons/personRows.ts';
import { readPersonScope } from '../../../db/persons/personScope.ts';
import { companyToday } from '../companyToday.ts';
import { fail, type Handlers, notFound } from '../handler.ts';
import { keepMade } from '../keepMade.ts';
import { personZip } from './personZip.ts';

export const personHandlers: Handlers<'persons.look' | 'persons.export' | 'persons.erase'> = {
  'persons.look': ({ partyId }, context) => {
    const { raw } = context.store;
    const party = findParty(context.db, partyId) ?? notFound('parties', partyId);
    const scope = readPersonScope(raw, partyId);
    return {
      name: party.name,
      isErased: party.erasedAt !== null,
      held: listPersonRows(raw, scope)
        .filter(({ rows }) => rows.length > 0)
        .map(({ name, rows }) => ({ what: name, count: rows.length })),
      fileCount: listPersonFiles(raw, scope).length,
      holds: personHolds(raw, scope, companyToday(context)),
      sharedSiteCount: scope.siteIds.length - scope.soleSiteIds.length,
      copyCount: context.services.backups.list().length,
    };
  },

  'persons.export': ({ partyId }, context) => {
    const { raw } = context.store;
    if (findParty(context.db, partyId) === undefined) return notFound('parties', partyId);
    const zip = personZip(listPersonRows(raw, readPersonScope(raw, partyId)), context.now);
    const fileName = `person-${companyToday(context)}.zip`;
    const attachmentId = keepMade(context, {
      bytes: zip,
      mediaType: 'application/zip',
      fileName,
      subject: 'person-export',
    });
    return { attachmentId, fileName };
  },

  'persons.erase': ({ partyId, typedName, alsoCopies }, context) => {
    const { raw } = context.store;
    const { attachments: files, backups } = context.services;
    const party = findParty(context.db, partyId) ?? notFound('parties', partyId);
    if (party.erasedAt !== null) return fail('person-erased', {});
    if (typedName.trim() !== party.name) return fail('name-differs', {});
    const { sweptRows, fileHashes } = context.write((writer) => erasePerson(raw, writer, partyId));
    for (const hash of fileHashes) files.remove(hash);
    scrubStore(raw);
    if (alsoCopies) {
      // The new copy first: a firm without any would be worse off than one with an old one.
      const before = backups.list();
      const made = backups.make(raw, 'daily', context.now);
      for (const { name } of before) if (name !== made.name) backups.remove(name);
    }
    context.services.changed(['customers', 'sites', 'appliances', 'visits', 'registrations', 'app']);
    return { sweptRows, fileCount: fileHashes.length, copiesLeft: alsoCopies ? 0 : backups.list().length };
  },
};
