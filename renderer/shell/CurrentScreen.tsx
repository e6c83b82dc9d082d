/** The screen that belongs to the current place. */
import { assertNever } from '../../domain/result.ts';
import { ApplianceScreen } from '../appliances/ApplianceScreen.tsx';
import { AppliancesScreen } from '../appliances/AppliancesScreen.tsx';
import { EditApplianceScreen } from '../appliances/EditApplianceScreen.tsx';
import { NewApplianceScreen } from '../appliances/NewApplianceScreen.tsx';
import { BackupsScreen } from '../backups/BackupsScreen.tsx';
import { BoardScreen } from '../board/BoardScreen.tsx';
import { ClaimsScreen } from '../claims/ClaimsScreen.tsx';
import { EditCustomerScreen, NewCustomerScreen } from '../customers/CustomerForm.tsx';
import { CustomerScreen } from '../customers/CustomerScreen.tsx';
import { CustomersScreen } from '../customers/CustomersScreen.tsx';
import { DeadlinesScreen } from '../deadlines/DeadlinesScreen.tsx';
import { HistoryScreen } from '../history/HistoryScreen.tsx';
import { TransferScreen } from '../history/TransferScreen.tsx';
import { ImportsScreen } from '../imports/ImportsScreen.tsx';
import { InstrumentsScreen } from '../instruments/InstrumentsScreen.tsx';
import { JobScreen } from '../jobs/JobScreen.tsx';
import { JobsScreen } from '../jobs/JobsScreen.tsx';
import { WastedTripsScreen } from '../jobs/WastedTripsScreen.tsx';
import { Screen } from '../kit/Screen.tsx';
import { MessagesScreen } from '../messages/MessagesScreen.tsx';
import { PacketBatchesScreen } from '../packets/PacketBatchesScreen.tsx';
import { PacketBatchScreen } from '../packets/PacketBatchScreen.tsx';
import { PaperScreen } from '../paper/PaperScreen.tsx';
import { PeopleScreen } from '../people/PeopleScreen.tsx';
import { StaffMemberScreen } from '../people/StaffMemberScreen.tsx';
import { PhoneScreen } from '../phone/PhoneScreen.tsx';
import { PhotosScreen } from '../photos/PhotosScreen.tsx';
import { PlanningScreen } from '../planning/PlanningScreen.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { RecallScreen } from '../recalls/RecallScreen.tsx';
import { RecallsScreen } from '../recalls/RecallsScreen.tsx';
import { RegistrationScreen } from '../registrations/RegistrationScreen.tsx';
import { RegistrationsScreen } from '../registrations/RegistrationsScreen.tsx';
import type { Place } from '../route.ts';
import { ServiceDueScreen } from '../serviceDue/ServiceDueScreen.tsx';
import { SettingsScreen } from '../settings/SettingsScreen.tsx';
import { SheetEditorScreen } from '../sheets/editor/SheetEditorScreen.tsx';
import { SheetScreen } from '../sheets/SheetScreen.tsx';
import { SheetsScreen } from '../sheets/SheetsScreen.tsx';
import { GasSupplyScreen } from '../sites/GasSupplyScreen.tsx';
import { EditSiteScreen, NewSiteScreen } from '../sites/SiteFormScreens.tsx';
import { SiteScreen } from '../sites/SiteScreen.tsx';
import { TodayScreen } from '../today/TodayScreen.tsx';
import { DiaryScreen } from '../visits/DiaryScreen.tsx';
import { VisitScreen } from '../visits/VisitScreen.tsx';
import { WorksheetScreen } from '../worksheets/WorksheetScreen.tsx';
import { WorksheetsScreen } from '../worksheets/WorksheetsScreen.tsx';

/** Every place but the run, which has the window to itself. Keyed by record, so that one form never shows another's draft. */
export function CurrentScreen({ place }: { readonly place: Exclude<Place, { screen: 'run' }> }) {
  switch (place.screen) {
    case 'today':
      return <TodayScreen />;
    case 'customers':
      return <CustomersScreen />;
    case 'new-customer':
      return <NewCustomerScreen key={place.params.typed ?? ''} typed={place.params.typed ?? null} />;
    case 'customer':
      return <CustomerScreen key={place.params.customerId} customerId={place.params.customerId} />;
    case 'edit-customer':
      return <EditCustomerScreen key={place.params.customerId} customerId={place.params.customerId} />;
    case 'new-site':
      return <NewSiteScreen key={place.params.customerId} customerId={place.params.customerId} />;
    case 'site':
      return <SiteScreen key={place.params.siteId} siteId={place.params.siteId} />;
    case 'edit-site':
      return <EditSiteScreen key={place.params.siteId} siteId={place.params.siteId} />;
    case 'gas-supply':
      return <GasSupplyScreen key={place.params.siteId} siteId={place.params.siteId} />;
    case 'new-appliance':
      return <NewApplianceScreen key={place.params.siteId} siteId={place.params.siteId} />;
    case 'appliances':
      return <AppliancesScreen />;
    case 'appliance':
      return <ApplianceScreen key={place.params.applianceId} applianceId={place.params.applianceId} />;
    case 'edit-appliance':
      return <EditApplianceScreen key={place.params.applianceId} applianceId={place.params.applianceId} />;
    case 'jobs':
      return <JobsScreen />;
    case 'wasted-trips':
      return <WastedTripsScreen />;
    case 'job':
      return <JobScreen key={place.params.jobId} jobId={place.params.jobId} />;
    case 'phone':
      return <PhoneScreen customerId={place.params.customerId ?? null} />;
    case 'board':
      return <BoardScreen day={place.params.day ?? null} />;
    case 'visits':
      return <DiaryScreen day={place.params.day ?? null} />;
    case 'visit':
      return <VisitScreen key={place.params.visitId} visitId={place.params.visitId} />;
    case 'deadlines':
      return <DeadlinesScreen />;
    case 'packet-batches':
      return <PacketBatchesScreen />;
    case 'packet-batch':
      return <PacketBatchScreen key={place.params.batchId} batchId={place.params.batchId} />;
    case 'service-due':
      return <ServiceDueScreen />;
    case 'registrations':
      return <RegistrationsScreen />;
    case 'registration':
      return <RegistrationScreen key={place.params.applianceId} applianceId={place.params.applianceId} />;
    case 'people':
      return <PeopleScreen />;
    case 'staff-member':
      return <StaffMemberScreen key={place.params.staffId} staffId={place.params.staffId} />;
    case 'instruments':
      return <InstrumentsScreen />;
    case 'sheets':
      return <SheetsScreen />;
    case 'sheet':
      return (
        <SheetScreen
          key={place.params.sheetId}
          sheetId={place.params.sheetId}
          revision={place.params.revision ?? null}
        />
      );
    case 'paper':
      return <PaperScreen key={place.params.runId} visitId={place.params.visitId} runId={place.params.runId} />;
    case 'photos':
      return <PhotosScreen key={place.params.runId} visitId={place.params.visitId} runId={place.params.runId} />;
    case 'sheet-draft':
      return (
        <SheetEditorScreen
          key={place.params.draftId}
          draftId={place.params.draftId}
          part={place.params.part ?? null}
          field={place.params.field ?? null}
        />
      );
    case 'appliance-history':
      return <HistoryScreen key={place.params.applianceId} applianceId={place.params.applianceId} />;
    case 'transfer-site':
      return <TransferScreen key={place.params.siteId} siteId={place.params.siteId} />;
    case 'planning':
      return <PlanningScreen />;
    case 'messages':
      return <MessagesScreen />;
    case 'recalls':
      return <RecallsScreen />;
    case 'recall':
      return <RecallScreen key={place.params.recallId} recallId={place.params.recallId} />;
    case 'claims':
      return <ClaimsScreen />;
    case 'imports':
      return <ImportsScreen />;
    case 'worksheets':
      return <WorksheetsScreen />;
    case 'worksheet': {
      const { worksheetKey, visitId, runId } = place.params;
      const from = visitId && runId ? { visitId, runId } : null;
      return <WorksheetScreen key={worksheetKey} worksheetKey={worksheetKey} from={from} />;
    }
    case 'backups':
      return <BackupsScreen />;
    case 'settings':
      return <SettingsScreen />;
    case 'unknown':
      return (
        <Screen title="Nothing here">
          <p>
            This address leads nowhere.{' '}
            <RouteLink to="today" params={{}} className="lo-link-inline">
              Go to Today
            </RouteLink>
          </p>
        </Screen>
      );
    default:
      return assertNever(place);
  }
}
