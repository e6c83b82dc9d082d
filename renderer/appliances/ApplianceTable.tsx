/** Appliances as a table, wherever they are listed. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { DateText } from '../kit/DateText.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { NoticeCount } from '../kit/NoticeCount.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { RouteLink } from '../RouteLink.tsx';

type ApplianceRow = OutputOf<'appliances.list'>['rows'][number];

function openCell({ openMakeSafes, openNotices }: ApplianceRow) {
  return (
    <>
      <MakeSafeCount count={openMakeSafes} /> <NoticeCount of={openNotices} />
    </>
  );
}

export function ApplianceTable({
  appliances,
  withCustomer = false,
}: {
  readonly appliances: readonly ApplianceRow[];
  readonly withCustomer?: boolean;
}) {
  return (
    <PlainTable
      caption="Appliances"
      rows={appliances}
      keyOf={(row) => row.applianceId}
      columns={[
        {
          label: 'Appliance',
          cell: (row) => (
            <RouteLink to="appliance" params={{ applianceId: row.applianceId }}>
              {row.maker} {row.model}
            </RouteLink>
          ),
        },
        { label: 'Serial', cell: (row) => row.serial },
        ...(withCustomer ? [{ label: 'Customer', cell: (row: ApplianceRow) => row.customerName ?? '' }] : []),
        { label: 'Where', cell: (row) => [row.street, row.city].filter(Boolean).join(', ') },
        {
          label: 'Started up',
          cell: (row) =>
            row.startedOn === null ? <span className="lo-faint">not yet</span> : <DateText day={row.startedOn} />,
        },
        { label: 'Open', cell: openCell },
      ]}
    />
  );
}
