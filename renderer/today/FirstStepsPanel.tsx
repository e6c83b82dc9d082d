/** In a store without customers: how a startup gets into the book, step by step. Gone as soon as the first one is there. */
import { Button } from '@mantine/core';
import { Panel } from '../kit/Panel.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { goTo } from '../route.ts';

export function FirstStepsPanel() {
  const customers = useOperation('customers.list', { limit: 1 });
  if (customers.state !== 'ready' || customers.value.rows.length > 0) return null;
  return (
    <Panel
      title="How the first startup gets into the book"
      action={<Button onClick={() => goTo('new-customer', {})}>New customer</Button>}
    >
      <ol style={{ margin: 0, paddingInlineStart: '1.5rem', maxWidth: '46rem' }}>
        <li>Add the customer, then the site with its heating system and gas, then the appliance from its plate.</li>
        <li>On the appliance press “New startup”, make the readiness call and book the visit.</li>
        <li>On site the technician opens the visit on the laptop and walks through it; no signal is needed.</li>
        <li>The sealed record becomes the registration packet, with its last day counted for you.</li>
      </ol>
      <p className="lo-faint" style={{ marginBlockEnd: 0 }}>
        Before that: licences and working hours under People, analysers under Instruments, and the maker’s sheet under
        Model sheets.
      </p>
    </Panel>
  );
}
