/** The owner's part of the scenario: service agreements, claims, notices and what was settled of them, packets asked for in one go. */
import {
  claims,
  packetBatches,
  packetBatchItems,
  recallOutcomes,
  recalls,
  serviceAgreements,
} from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { toClaimRow } from '../operations/history/claimRow.ts';
import { type Ids, idOf } from './ids.ts';
import type { Scenario } from './scenario.ts';

export function addOfficeWork(writer: StoreWriter, data: Scenario, ids: Ids): void {
  const byId = idOf(ids, 'owner');
  for (const { applianceKey, ...agreement } of data.agreements) {
    const [applianceId, partyId] = [idOf(ids, applianceKey), idOf(ids, `customer of ${applianceKey}`)];
    writer.insert(serviceAgreements, { applianceId, partyId, ...agreement });
  }
  for (const { applianceKey, claim } of data.claims)
    writer.insert(claims, { applianceId: idOf(ids, applianceKey), ...toClaimRow(claim) });
  for (const { key, recall, outcomes } of data.recalls) {
    const addedAt = `${recall.issuedOn}T15:00:00.000Z`;
    const recallId = writer.insert(recalls, { ...recall, addedById: byId, addedAt });
    ids.set(key, recallId);
    for (const { applianceKey, ...outcome } of outcomes)
      writer.insert(recallOutcomes, { recallId, applianceId: idOf(ids, applianceKey), ...outcome, byId });
  }
  for (const { startedAt, visitKeys } of data.packetBatches) {
    const batchId = writer.insert(packetBatches, { isDraft: false, startedById: byId, startedAt });
    for (const [position, visitKey] of visitKeys.entries())
      writer.insert(packetBatchItems, { batchId, position, runId: idOf(ids, `run of ${visitKey}`), state: 'waiting' });
  }
}
