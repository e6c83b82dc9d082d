/** All customers, searched as one types. */
import { Button } from '@mantine/core';
import { Answer } from '../kit/Answer.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { SearchBox } from '../kit/SearchBox.tsx';
import { useKept } from '../kit/useKept.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { useShortcut } from '../shortcuts/Shortcuts.tsx';

export function CustomersScreen() {
  const [query, setQuery] = useKept('customers.query', '');
  const pages = usePages(query);
  const found = useOperation('customers.list', { query, after: pages.after });
  const mayCreate = useHasRole('dispatcher', 'owner', 'technician');
  const isNobody = found.state === 'ready' && found.value.rows.length === 0;
  const create = () => {
    if (mayCreate) goTo('new-customer', { typed: isNobody ? query.trim() || null : null });
  };
  useShortcut('n', 'New customer', create);
  const createButton = mayCreate ? <Button onClick={create}>New customer</Button> : undefined;
  return (
    <Screen title="Customers" action={createButton}>
      <SearchBox label="Search by name, phone, street, city or serial number" query={query} onQuery={setQuery} />
      <Answer of={found}>
        {({ rows, next }) =>
          rows.length === 0 ? (
            query === '' ? (
              <EmptyState title="No customers yet" action={createButton}>
                Everybody whose boilers you start up or service. A customer gets sites, a site gets appliances; add the
                first one here, or while you book a job.
              </EmptyState>
            ) : (
              <EmptyState title={`Nobody found for “${query}”`} action={createButton}>
                Fewer letters find more; street, city, phone and serial number are searched too.
              </EmptyState>
            )
          ) : (
            <>
              <PlainTable
                caption="Customers"
                rows={rows}
                keyOf={(row) => row.customerId}
                columns={[
                  {
                    label: 'Name',
                    cell: (row) => (
                      <RouteLink to="customer" params={{ customerId: row.customerId }}>
                        {row.name}
                      </RouteLink>
                    ),
                  },
                  { label: 'Phone', cell: (row) => row.phone ?? '' },
                  { label: 'City', cell: (row) => row.city ?? '' },
                  { label: 'Sites', cell: (row) => row.siteCount, isNumber: true },
                  { label: 'Appliances', cell: (row) => row.applianceCount, isNumber: true },
                  { label: 'Open', cell: (row) => <MakeSafeCount count={row.openMakeSafes} /> },
                ]}
              />
              <PageTurner pages={pages} next={next} />
            </>
          )
        }
      </Answer>
    </Screen>
  );
}
