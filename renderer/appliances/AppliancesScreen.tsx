/** All appliances, found by serial, model, street or customer. */
import { Answer } from '../kit/Answer.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { Screen } from '../kit/Screen.tsx';
import { SearchBox } from '../kit/SearchBox.tsx';
import { useKept } from '../kit/useKept.ts';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { RouteLink } from '../RouteLink.tsx';
import { ApplianceTable } from './ApplianceTable.tsx';

export function AppliancesScreen() {
  const [query, setQuery] = useKept('appliances.query', '');
  const pages = usePages(query);
  const found = useOperation('appliances.list', { query, after: pages.after });
  return (
    <Screen title="Appliances">
      <SearchBox label="Search by serial number, maker, model, street or customer" query={query} onQuery={setQuery} />
      <Answer of={found}>
        {({ rows, next }) =>
          rows.length === 0 ? (
            <EmptyState title={query === '' ? 'No appliances yet' : `Nothing found for “${query}”`}>
              An appliance is added at its site: open a{' '}
              <RouteLink to="customers" params={{}} className="lo-link-inline">
                customer
              </RouteLink>
              , choose the site, then “New appliance”.
            </EmptyState>
          ) : (
            <>
              <ApplianceTable appliances={rows} withCustomer />
              <PageTurner pages={pages} next={next} />
            </>
          )
        }
      </Answer>
    </Screen>
  );
}
