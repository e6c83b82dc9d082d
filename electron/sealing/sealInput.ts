/** What is handed in to be sealed: the run and everything around it as the store holds it, names and numbers still plain. */
import type { Finding } from '../../domain/judgement/finding.ts';
import type { CoverDate, FuelKey, ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { StepList } from '../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import type { PartyRole } from '../../domain/vocabulary/people.ts';
import type { CompanyProfile } from '../contract/app.ts';
import type { ApplianceFields } from '../contract/appliances.ts';
import type { PartyFields } from '../contract/parties.ts';
import type { Licence } from '../contract/people.ts';
import type { GasSupplyFields, SiteFields } from '../contract/sites.ts';
import type { SealedRecord } from './sealedRecord.ts';

/** A number worked out from readings, with how. */
export type ComputedValue = {
  readonly key: string;
  readonly label: string;
  readonly point: string | null;
  /** null: it can't be worked out; `missing` says why. */
  readonly value: number | null;
  readonly unit: string;
  readonly decimals: number;
  readonly plusMinus: number | null;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly source: string | null;
  readonly missing: readonly string[];
};

export type CrewAtVisit = {
  readonly staffId: string;
  readonly name: string;
  readonly role: SealedRecord['people'][number]['role'];
  /** All they held, whether in date or not. */
  readonly licences: readonly Omit<Licence, 'licenceId' | 'endReason'>[];
  readonly trainings: readonly {
    readonly maker: string;
    readonly modelLine: string;
    readonly number: string | null;
    readonly validFrom: string;
    readonly validTo: string | null;
  }[];
};

export type PartyAtVisit = {
  readonly partyId: string;
  readonly party: PartyFields;
  readonly roles: readonly PartyRole[];
  readonly consents: SealedRecord['parties'][number]['consents'];
};

/** Everything but the place in the chain. */
export type RecordInput = {
  readonly language: SealedRecord['language'];
  readonly unitSystem: SealedRecord['unitSystem'];
  readonly company: CompanyProfile;
  readonly job: SealedRecord['job'];
  readonly visit: {
    readonly visitId: string;
    /** The day at the site. */
    readonly on: string;
    readonly startedAt: string | null;
    readonly finishedAt: string | null;
    readonly outcome: SealedRecord['visit']['outcome'];
    readonly labourMin: number | null;
  };
  readonly crew: readonly CrewAtVisit[];
  readonly parties: readonly PartyAtVisit[];
  /** Whose home or plant it is: free words and the site's address are erased with this party. */
  readonly subjectPartyId: string | null;
  readonly site: SiteFields & { readonly siteId: string };
  readonly gasSupply: GasSupplyFields | null;
  readonly appliance: ApplianceFields & {
    readonly applianceId: string;
    readonly position: string | null;
    readonly dates: readonly {
      readonly kind: CoverDate;
      readonly on: string;
      readonly precision: 'day' | 'month' | 'year';
      readonly source: string;
    }[];
    readonly fuelState: {
      readonly fuel: FuelKey;
      readonly fromOn: string;
      readonly conversionKit: string | null;
      readonly orifice: string | null;
      readonly proof: string | null;
    } | null;
  };
  readonly permits: SealedRecord['permits'];
  readonly sheet: ModelSheet;
  /** Which of the sheet's two lists was walked. */
  readonly steps: StepList;
  readonly run: RunRecord;
  readonly findings: readonly Finding[];
  readonly computed: readonly ComputedValue[];
};

/** The place of an entry in the chain of its visit. */
export type SealPosition = {
  readonly sequence: number;
  readonly kind: 'sealed' | 'amendment';
  readonly previousSha256: string | null;
  readonly amends: { readonly sha256: string; readonly reason: string } | null;
  readonly sealedAt: string;
  readonly sealedById: string;
};
