/** Every handler, by the name of its operation; the compiler sees that none is missing. */
import type { OperationName } from '../contract/index.ts';
import { agreementHandlers } from './agreementHandlers.ts';
import { appHandlers } from './appHandlers.ts';
import { applianceHandlers } from './applianceHandlers.ts';
import { backupHandlers } from './backupHandlers.ts';
import { boardHandlers } from './boardHandlers.ts';
import { bookingHandlers } from './bookingHandlers.ts';
import { cancelledVisitHandlers } from './cancelledVisitHandlers.ts';
import { chargeHandlers } from './chargeHandlers.ts';
import { coverageHandlers } from './coverageHandlers.ts';
import { credentialHandlers } from './credentialHandlers.ts';
import { customerHandlers } from './customerHandlers.ts';
import { deadlineHandlers } from './deadlineHandlers.ts';
import { exportHandlers } from './exports/exportHandlers.ts';
import { finishHandlers } from './finishHandlers.ts';
import type { Handlers } from './handler.ts';
import { handoverHandlers } from './handoverHandlers.ts';
import { claimHandlers } from './history/claimHandlers.ts';
import { historyHandlers } from './history/historyHandlers.ts';
import { transferHandlers } from './history/transferHandlers.ts';
import { importHandlers } from './imports/importHandlers.ts';
import { instrumentChangeHandlers } from './instrumentChangeHandlers.ts';
import { makeSafeHandlers } from './makeSafeHandlers.ts';
import { messageHandlers } from './messages/messageHandlers.ts';
import { outputHandlers } from './outputHandlers.ts';
import { oversightHandlers } from './oversightHandlers.ts';
import { packetBatchHandlers } from './packetBatchHandlers.ts';
import { packetHandlers } from './packetHandlers.ts';
import { paperHandlers } from './paperHandlers.ts';
import { peopleHandlers } from './peopleHandlers.ts';
import { permitHandlers } from './permitHandlers.ts';
import { personHandlers } from './persons/personHandlers.ts';
import { photoHandlers } from './photoHandlers.ts';
import { placementHandlers } from './placementHandlers.ts';
import { planningHandlers } from './planningHandlers.ts';
import { plateHandlers } from './plateHandlers.ts';
import { readinessHandlers } from './readinessHandlers.ts';
import { readingHandlers } from './readingHandlers.ts';
import { recallHandlers } from './recalls/recallHandlers.ts';
import { recordHandlers } from './recordHandlers.ts';
import { registrationHandlers } from './registrationHandlers.ts';
import { repairHandlers } from './repairHandlers.ts';
import { rescueHandlers } from './rescueHandlers.ts';
import { runHandlers } from './runHandlers.ts';
import { serviceDueHandlers } from './serviceDueHandlers.ts';
import { serviceHandlers } from './serviceHandlers.ts';
import { sheetDraftHandlers } from './sheetDraftHandlers.ts';
import { sheetHandlers } from './sheetHandlers.ts';
import { siteHandlers } from './siteHandlers.ts';
import { sitePeopleHandlers } from './sitePeopleHandlers.ts';
import { travelHandlers } from './travelHandlers.ts';
import { waitHandlers } from './waitHandlers.ts';
import { workforceHandlers } from './workforceHandlers.ts';

export const handlers: Handlers<OperationName> = {
  ...appHandlers,
  ...peopleHandlers,
  ...credentialHandlers,
  ...instrumentChangeHandlers,
  ...customerHandlers,
  ...personHandlers,
  ...siteHandlers,
  ...sitePeopleHandlers,
  ...permitHandlers,
  ...applianceHandlers,
  ...placementHandlers,
  ...sheetHandlers,
  ...rescueHandlers,
  ...sheetDraftHandlers,
  ...bookingHandlers,
  ...chargeHandlers,
  ...planningHandlers,
  ...workforceHandlers,
  ...travelHandlers,
  ...boardHandlers,
  ...outputHandlers,
  ...readinessHandlers,
  ...runHandlers,
  ...repairHandlers,
  ...plateHandlers,
  ...readingHandlers,
  ...waitHandlers,
  ...makeSafeHandlers,
  ...finishHandlers,
  ...registrationHandlers,
  ...deadlineHandlers,
  ...serviceDueHandlers,
  ...agreementHandlers,
  ...serviceHandlers,
  ...coverageHandlers,
  ...messageHandlers,
  ...recallHandlers,
  ...handoverHandlers,
  ...oversightHandlers,
  ...packetHandlers,
  ...packetBatchHandlers,
  ...recordHandlers,
  ...paperHandlers,
  ...photoHandlers,
  ...backupHandlers,
  ...importHandlers,
  ...exportHandlers,
  ...cancelledVisitHandlers,
  ...historyHandlers,
  ...transferHandlers,
  ...claimHandlers,
};
