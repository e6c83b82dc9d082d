/** What the cover of one appliance is worked out from: nothing here is judged yet. */
import type { SheetCover } from '../procedure/modelSheet.ts';
import type { ServiceRule } from '../service/serviceRule.ts';
import type { KnownDate } from './dateOrder.ts';

export type CoverUse = 'home' | 'commercial';

export type CoverFacts = {
  /** The day in the site's own time zone. */
  readonly today: string;
  /** null: no sheet, or a sheet that says nothing of cover. */
  readonly cover: SheetCover | null;
  readonly serviceRule: ServiceRule;
  readonly dates: readonly KnownDate[];
  readonly registration: {
    readonly submittedOn: string | null;
    readonly confirmedOn: string | null;
    readonly number: string | null;
  };
  /** Days of services on record. */
  readonly servicesOn: readonly string[];
  readonly evidence: {
    readonly isWaterQualityRecorded: boolean;
    /** The one who signed the startup held a licence valid on that day. */
    readonly isInstallerLicensed: boolean;
    /** null: not known. */
    readonly use: CoverUse | null;
  };
  readonly ownerChanges: readonly { readonly on: string; readonly toldMakerOn: string | null }[];
  readonly place: { readonly country: string; readonly region: string | null };
};
