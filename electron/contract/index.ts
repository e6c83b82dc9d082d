/** Every operation the app can be asked for, by name: the one boundary between screens and core. */
import type { z } from 'zod';
import { agreementOperations } from './agreements.ts';
import { appOperations } from './app.ts';
import { applianceOperations } from './appliances.ts';
import { backupOperations } from './backups.ts';
import { boardOperations } from './board.ts';
import { chargeOperations } from './charges.ts';
import { credentialOperations } from './credentials.ts';
import { customerOperations } from './customers.ts';
import { dueOperations } from './dues.ts';
import { handoverOperations } from './handovers.ts';
import { historyOperations } from './history.ts';
import { importOperations } from './imports.ts';
import { instrumentChangeOperations } from './instrumentChanges.ts';
import { jobOperations } from './jobs.ts';
import { makeSafeOperations } from './makeSafes.ts';
import { messageOperations } from './messages.ts';
import type { ErrorOf, Reply } from './operation.ts';
import { outputOperations } from './outputs.ts';
import { oversightOperations } from './oversight.ts';
import { packetBatchOperations } from './packetBatches.ts';
import { paperOperations } from './paper.ts';
import { peopleOperations } from './people.ts';
import { personOperations } from './persons.ts';
import { photoOperations } from './photos.ts';
import { placementOperations } from './placements.ts';
import { planningOperations } from './planning.ts';
import { readinessOperations } from './readiness.ts';
import { recallOperations } from './recalls.ts';
import { recordOperations } from './records.ts';
import { registrationOperations } from './registrations.ts';
import { rescueOperations } from './rescue.ts';
import { runOperations } from './runs.ts';
import { serviceOperations } from './service.ts';
import { sheetDraftOperations } from './sheetDrafts.ts';
import { sheetOperations } from './sheets.ts';
import { siteOperations } from './sites.ts';
import { travelOperations } from './travel.ts';
import { visitOperations } from './visits.ts';
import { workforceOperations } from './workforce.ts';

export const contract = {
  ...appOperations,
  ...peopleOperations,
  ...credentialOperations,
  ...instrumentChangeOperations,
  ...customerOperations,
  ...personOperations,
  ...siteOperations,
  ...applianceOperations,
  ...placementOperations,
  ...sheetOperations,
  ...sheetDraftOperations,
  ...jobOperations,
  ...chargeOperations,
  ...visitOperations,
  ...runOperations,
  ...makeSafeOperations,
  ...planningOperations,
  ...workforceOperations,
  ...travelOperations,
  ...boardOperations,
  ...outputOperations,
  ...readinessOperations,
  ...registrationOperations,
  ...packetBatchOperations,
  ...recordOperations,
  ...paperOperations,
  ...photoOperations,
  ...dueOperations,
  ...serviceOperations,
  ...agreementOperations,
  ...messageOperations,
  ...recallOperations,
  ...handoverOperations,
  ...backupOperations,
  ...rescueOperations,
  ...importOperations,
  ...historyOperations,
  ...oversightOperations,
} as const;

export type Contract = typeof contract;
export type OperationName = keyof Contract;
/** As a screen gives it: fields with a default may be left out. */
export type InputOf<N extends OperationName> = z.input<Contract[N]['input']>;
/** As a handler gets it. */
export type ParsedInputOf<N extends OperationName> = z.output<Contract[N]['input']>;
export type OutputOf<N extends OperationName> = z.output<Contract[N]['output']>;
/** Spread over a union of names, each with its own failures. */
export type ErrorsOf<N extends OperationName> = N extends OperationName ? ErrorOf<Contract[N]> : never;
export type ReplyOf<N extends OperationName> = Reply<OutputOf<N>, ErrorsOf<N>>;

export function isOperationName(name: string): name is OperationName {
  return Object.hasOwn(contract, name);
}
