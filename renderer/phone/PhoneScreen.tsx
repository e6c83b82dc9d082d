/** Somebody is on the phone: who, which appliance, what is due and open there, and a visit booked before they hang up. */
import { Button } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { moveByArrows } from '../kit/arrowKeys.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { NoticeCount } from '../kit/NoticeCount.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { SearchBox } from '../kit/SearchBox.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { CallerAppliance } from './CallerAppliance.tsx';

/** More than this and a few more letters are quicker than reading. */
const SHOWN = 8;

export function PhoneScreen({ customerId }: { readonly customerId: string | null }) {
  return (
    <Screen
      title="On the phone"
      action={
        customerId === null ? undefined : (
          <Button variant="default" onClick={() => goTo('phone', {})}>
            Another caller
          </Button>
        )
      }
    >
      {customerId === null ? <FindCaller /> : <Caller key={customerId} customerId={customerId} />}
    </Screen>
  );
}

function FindCaller() {
  const [query, setQuery] = useState('');
  const found = useOperation('customers.list', { query, limit: SHOWN }, { isWanted: query.trim() !== '' });
  const list = useRef<HTMLUListElement>(null);
  // Enter may come before the answer to what was typed.
  const [entered, setEntered] = useState<string | null>(null);
  const rows = found.state === 'ready' ? found.value.rows : null;
  useEffect(() => {
    if (entered === null || entered !== query || rows === null) return;
    setEntered(null);
    const [only, ...more] = rows;
    if (only === undefined) return;
    // Of several callers one has to be chosen with open eyes.
    if (more.length === 0) goTo('phone', { customerId: only.customerId });
    else list.current?.querySelector('a')?.focus();
  }, [entered, query, rows]);
  return (
    <Panel title="Who is calling?">
      <SearchBox
        label="Name, phone, street or serial number"
        query={query}
        onQuery={(text) => {
          // Whoever types on after Enter is led nowhere; on Enter itself it is set again at once.
          setEntered(null);
          setQuery(text);
        }}
        isFocused
        onEnter={setEntered}
      />
      {query.trim() === '' ? null : (
        <Answer of={found}>
          {({ rows }) =>
            rows.length === 0 ? (
              <EmptyState
                title={`Nobody found for “${query}”`}
                action={<Button onClick={() => goTo('new-customer', { typed: query.trim() })}>New customer</Button>}
              >
                Fewer letters find more.
              </EmptyState>
            ) : (
              <ul className="lo-gaps" aria-label="Found" ref={list} onKeyDown={moveByArrows}>
                {rows.map((row) => (
                  <li key={row.customerId}>
                    <RouteLink to="phone" params={{ customerId: row.customerId }}>
                      {row.name}
                    </RouteLink>
                    <span className="lo-faint">
                      {[row.phone, row.city].filter(Boolean).join(', ')} <MakeSafeCount count={row.openMakeSafes} />
                    </span>
                  </li>
                ))}
              </ul>
            )
          }
        </Answer>
      )}
    </Panel>
  );
}

function Caller({ customerId }: { readonly customerId: string }) {
  const customer = useOperation('customers.get', { customerId });
  return <Answer of={customer}>{(found) => <CallerDetails customer={found} />}</Answer>;
}

function CallerDetails({ customer }: { readonly customer: OutputOf<'customers.get'> }) {
  const { party, appliances, customerId } = customer;
  const [chosenId, setChosenId] = useState(appliances.length === 1 ? (appliances[0]?.applianceId ?? null) : null);
  const chosen = appliances.find(({ applianceId }) => applianceId === chosenId) ?? null;
  const choice = useRef<HTMLFieldSetElement>(null);
  // Straight on to the choice; with one appliance there is none, and what they want has the keyboard.
  const isChoice = appliances.length > 1;
  useEffect(() => {
    if (isChoice) choice.current?.querySelector('button')?.focus();
  }, [isChoice]);
  return (
    <>
      <Panel
        title={party.name}
        action={
          <RouteLink to="customer" params={{ customerId }}>
            Everything about them
          </RouteLink>
        }
      >
        <p style={{ margin: 0 }}>
          {[party.phoneTyped, party.street, party.city].filter(Boolean).join(' · ') || 'No phone or address on file.'}
        </p>
        {appliances.length === 0 ? (
          <EmptyState title="No appliance on file">
            Add the site and its appliance under{' '}
            <RouteLink to="customer" params={{ customerId }} className="lo-link-inline">
              the customer
            </RouteLink>
            .
          </EmptyState>
        ) : (
          <fieldset className="lo-people" aria-label="Which appliance?" ref={choice}>
            {appliances.map((appliance) => (
              <button
                key={appliance.applianceId}
                type="button"
                className="lo-person"
                aria-pressed={appliance.applianceId === chosenId}
                onClick={() => setChosenId(appliance.applianceId)}
              >
                <strong>
                  {appliance.maker} {appliance.model}
                </strong>
                <span className="lo-faint">{[appliance.serial, appliance.street].filter(Boolean).join(', ')}</span>
                <MakeSafeCount count={appliance.openMakeSafes} />
                <NoticeCount of={appliance.openNotices} />
              </button>
            ))}
          </fieldset>
        )}
      </Panel>
      {chosen === null ? null : <CallerAppliance key={chosen.applianceId} applianceId={chosen.applianceId} />}
    </>
  );
}
