/** A new site of a customer, or the particulars of one on file. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo, replaceWith } from '../route.ts';
import { SiteFieldset } from './SiteFieldset.tsx';
import { emptySite, type SiteForm, siteFromForm, siteToForm } from './siteForm.ts';

export function NewSiteScreen({ customerId }: { readonly customerId: string }) {
  const customer = useOperation('customers.get', { customerId });
  return (
    <Screen
      title="New site"
      crumbs={
        <RouteLink to="customer" params={{ customerId }}>
          Back to the customer
        </RouteLink>
      }
    >
      <Answer of={customer}>{(found) => <NewSiteForm customer={found} />}</Answer>
    </Screen>
  );
}

function NewSiteForm({ customer }: { readonly customer: OutputOf<'customers.get'> }) {
  const { company, unitSystem } = useAppStatus();
  const { customerId, party } = customer;
  const blank = emptySite(company, unitSystem);
  // Most people live where their boiler is: the address for letters is a start, seen and changeable.
  const initial: SiteForm = {
    ...blank,
    street: party.street ?? '',
    postcode: party.postcode ?? '',
    city: party.city ?? '',
    region: party.region ?? blank.region,
    country: party.country ?? blank.country,
  };
  const form = useDraftForm({
    draftKey: `new-site.${customerId}`,
    operation: 'sites.create',
    inputRoot: 'site',
    initial,
    toInput: (values, reader) => ({ customerId, site: siteFromForm(values, reader) }),
    onDone: ({ siteId }) => replaceWith('site', { siteId }),
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add site" failure={<ErrorText error={form.error} />}>
      <SiteFieldset form={form} neighbourAltitudesM={[]} />
    </DraftFormFrame>
  );
}

export function EditSiteScreen({ siteId }: { readonly siteId: string }) {
  const found = useOperation('sites.get', { siteId });
  return (
    <Screen
      title="Edit site"
      crumbs={
        <RouteLink to="site" params={{ siteId }}>
          Back to the site
        </RouteLink>
      }
    >
      <Answer of={found}>{(site) => <EditSiteForm found={site} />}</Answer>
    </Screen>
  );
}

function EditSiteForm({ found }: { readonly found: OutputOf<'sites.get'> }) {
  const { unitSystem } = useAppStatus();
  const { siteId, site } = found;
  const form = useDraftForm({
    draftKey: `site.${siteId}`,
    operation: 'sites.update',
    inputRoot: 'site',
    initial: siteToForm(site, unitSystem),
    toInput: (values, reader) => ({ siteId, site: siteFromForm(values, reader) }),
    onDone: () => goTo('site', { siteId }),
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
      <SiteFieldset form={form} neighbourAltitudesM={found.neighbourAltitudesM} />
    </DraftFormFrame>
  );
}
