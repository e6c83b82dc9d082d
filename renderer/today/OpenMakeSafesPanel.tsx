/** Everything that was made safe and that nobody has closed: what, where, how it was isolated and who knows. */
import { InstantText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function OpenMakeSafesPanel() {
  const found = useOperation('makeSafes.list', {});
  if (found.state === 'failed') return <ErrorText error={found.error} />;
  if (found.state === 'loading' || found.value.length === 0) return null;
  return (
    <Panel title={`Made safe and still open: ${found.value.length}`}>
      <PlainTable
        caption="Open make-safes"
        rows={found.value}
        keyOf={(row) => row.makeSafeId}
        columns={[
          {
            label: 'Where',
            cell: (row) => (
              <>
                <RouteLink to="appliance" params={{ applianceId: row.applianceId }}>
                  {row.maker} {row.model}, {row.serial}
                </RouteLink>
                <div className="lo-faint">
                  {row.customerName}, {row.street}, {row.city}
                </div>
              </>
            ),
          },
          {
            label: 'What',
            cell: (row) => (
              <>
                <span className="lo-verdict" data-tone="stop">
                  {row.what}
                </span>
                {row.isRefused ? <div>The occupant refused isolation.</div> : null}
              </>
            ),
          },
          { label: 'Isolated', cell: (row) => row.isolatedHow ?? <span className="lo-faint">not written down</span> },
          { label: 'Told', cell: (row) => row.toldWhom ?? <span className="lo-faint">not written down</span> },
          {
            label: 'Since',
            cell: (row) => (
              <>
                <InstantText at={row.openedAt} />
                <div className="lo-faint">{row.openedByName}</div>
              </>
            ),
          },
        ]}
      />
    </Panel>
  );
}
