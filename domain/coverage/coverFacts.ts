/** What the cover of one appliance is worked out from: nothing here is judged yet. */
import type { SheetCover } from '../procedure/modelSheet.ts';
import type { ServiceFacts } from '../service/nextService.ts';

export type CoverUse = 'home' | 'commercial';

export type CoverFacts = ServiceFacts & {
  /** The day in the site's own time zone. */
  readonly today: string;
  /** null: no sheet, or a sheet that says nothing of cover. */
  readonly cover: SheetCover | null;
  readonly registration: {
    readonly submittedOn: string | null;
    readonly confirmedOn: string | null;
    readonly number: string | null;
  };
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
