/** One site: its appliances, how one gets in, the heating system, the gas, and who is who there. */
import { Button, Group } from '@mantine/core';
import type { OutputOf } from '../../electron/contract/index.ts';
import { ApplianceTable } from '../appliances/ApplianceTable.tsx';
import { addressWords } from '../customers/addressWords.ts';
import { AmountText } from '../kit/AmountText.tsx';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Facts } from '../kit/Facts.tsx';
import { HistoryPanel } from '../kit/HistoryPanel.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { BUILDING_WORDS, EMITTER_WORDS, FUEL_WORDS } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { GasLoadGaps } from './GasLoadGaps.tsx';
import { GasLoadNote } from './GasLoadNote.tsx';
import { COMPENSATION_WORDS, gasToForm, loadBalance } from './gasForm.ts';
import { PermitsPanel } from './PermitsPanel.tsx';
import { RolesPanel } from './RolesPanel.tsx';

export function SiteScreen({ siteId }: { readonly siteId: string }) {
  const found = useOperation('sites.get', { siteId });
  const mayEdit = useHasRole('dispatcher', 'owner', 'technician');
  const value = found.state === 'ready' ? found.value : null;
  return (
    <Screen
      title={value === null ? 'Site' : `${value.site.street}, ${value.site.city}`}
      crumbs={
        value === null ? undefined : (
          <RouteLink to="customer" params={{ customerId: value.customerId }}>
            {value.customerName}
          </RouteLink>
        )
      }
      action={
        mayEdit ? (
          <Group gap="sm">
            <Button variant="default" onClick={() => goTo('edit-site', { siteId })}>
              Edit
            </Button>
            <Button onClick={() => goTo('new-appliance', { siteId })}>New appliance</Button>
          </Group>
        ) : undefined
      }
    >
      <Answer of={found}>{(site) => <Site found={site} mayEdit={mayEdit} />}</Answer>
    </Screen>
  );
}

function Site({ found, mayEdit }: { readonly found: OutputOf<'sites.get'>; readonly mayEdit: boolean }) {
  const { siteId, site, appliances } = found;
  return (
    <>
      {mayEdit ? (
        <>
          <Shortcut keys="n" label="New appliance" onPress={() => goTo('new-appliance', { siteId })} />
          <Shortcut keys="m" label="The gas supply" onPress={() => goTo('gas-supply', { siteId })} />
        </>
      ) : null}
      <Panel title="Appliances">
        {appliances.length === 0 ? (
          <EmptyState
            title="No appliance yet"
            action={
              mayEdit ? <Button onClick={() => goTo('new-appliance', { siteId })}>New appliance</Button> : undefined
            }
          >
            One entry for each boiler, with its serial number. Startups, services and the registration hang on it.
          </EmptyState>
        ) : (
          <ApplianceTable appliances={appliances} />
        )}
      </Panel>
      <div className="lo-columns">
        <Panel title="Where and how to get in">
          <Facts
            facts={[
              ['Address', addressWords(site)],
              ['Access', site.access],
              ['Building', BUILDING_WORDS[site.buildingKind]],
              ['Time zone', site.timeZone],
              ['Altitude', <AmountText key="altitude" dimension="length" own={site.altitudeM} decimals={0} />],
            ]}
          />
        </Panel>
        <Panel title="Heating system">
          <Facts
            facts={[
              ['Height', <AmountText key="height" dimension="length" own={site.systemHeightM} decimals={1} />],
              [
                'Volume',
                site.systemVolumeL === null ? null : (
                  <span key="volume">
                    <AmountText dimension="volume" own={site.systemVolumeL} decimals={0} />
                    {site.systemVolumeHow === null ? '' : `, ${site.systemVolumeHow}`}
                  </span>
                ),
              ],
              ['Cold water in', <AmountText key="cold" dimension="temperature" own={site.coldWaterC} decimals={0} />],
              ['Glycol', site.glycolKind === null ? 'none known' : `${site.glycolKind} glycol`],
              ['Emitters', site.emitters.length === 0 ? null : <EmitterList key="emitters" emitters={site.emitters} />],
            ]}
          />
        </Panel>
        <GasPanel found={found} mayEdit={mayEdit} />
        <RolesPanel site={found} mayEdit={mayEdit} />
        <PermitsPanel site={found} mayEdit={mayEdit} />
      </div>
      <HistoryPanel entity="sites" entityId={siteId} />
    </>
  );
}

function EmitterList({ emitters }: { readonly emitters: OutputOf<'sites.get'>['site']['emitters'] }) {
  return (
    <ul style={{ margin: 0, paddingInlineStart: '1.1rem' }}>
      {emitters.map(({ emitter, zone, ratedKw }) => (
        <li key={`${emitter} ${zone} ${ratedKw}`}>
          {EMITTER_WORDS[emitter]}
          {zone === null ? '' : `, ${zone}`}
          {ratedKw === null ? null : (
            <>
              , <AmountText dimension="power" own={ratedKw} decimals={1} />
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

function GasPanel({ found, mayEdit }: { readonly found: OutputOf<'sites.get'>; readonly mayEdit: boolean }) {
  const { siteId, gasSupply: gas } = found;
  const edit = mayEdit ? (
    <Button variant="default" onClick={() => goTo('gas-supply', { siteId })}>
      {gas === null ? 'Add the gas supply' : 'Edit'}
    </Button>
  ) : undefined;
  if (gas === null) {
    return (
      <Panel title="Gas supply">
        <EmptyState title="Not known yet" action={edit}>
          Meter or tank, what it can give, the heating value and what else hangs on it. The startup needs the fuel and
          the heating value to work out the input.
        </EmptyState>
      </Panel>
    );
  }
  const balance = loadBalance(gasToForm(gas, 'metric'));
  return (
    <Panel title="Gas supply" action={edit}>
      <Facts
        facts={[
          ['Fuel', FUEL_WORDS[gas.fuel]],
          [gas.kind === 'meter' ? 'Meter' : 'Tank', gas.number],
          ...(gas.kind === 'meter'
            ? ([
                ['Test dial', <AmountText key="dial" dimension="gas-volume" own={gas.dialM3} decimals={3} />],
                ['Compensation', gas.compensation === null ? null : COMPENSATION_WORDS[gas.compensation]],
                [
                  'Capacity per hour',
                  <AmountText key="capacity" dimension="gas-volume" own={gas.capacityM3PerH} decimals={1} />,
                ],
              ] as const)
            : ([['Volume', <AmountText key="tank" dimension="volume" own={gas.tankVolumeL} decimals={0} />]] as const)),
          ['Regulator', gas.regulator],
          ['Pressure', <AmountText key="pressure" dimension="gas-pressure" own={gas.nominalMbarG} decimals={1} />],
          [
            'Heating value',
            gas.heatingValueMjPerM3 === null ? null : (
              <span key="hv">
                <AmountText dimension="heating-value" own={gas.heatingValueMjPerM3} decimals={2} /> gross
                <div className="lo-faint">
                  {gas.heatingValueSource}
                  {gas.heatingValueOn === null ? null : (
                    <>
                      , <DateText day={gas.heatingValueOn} />
                    </>
                  )}
                </div>
              </span>
            ),
          ],
        ]}
      />
      {gas.loads.length > 0 ? (
        <PlainTable
          caption="Connected to it"
          rows={gas.loads}
          keyOf={({ name, applianceId }) => `${name} ${applianceId}`}
          columns={[
            { label: 'Connected', cell: ({ name }) => name },
            {
              label: 'Input',
              cell: ({ inputKw }) =>
                inputKw === null ? 'not known' : <AmountText dimension="power" own={inputKw} decimals={1} />,
              isNumber: true,
            },
          ]}
        />
      ) : null}
      {balance === null ? null : <GasLoadNote balance={balance} />}
      <GasLoadGaps siteId={siteId} />
    </Panel>
  );
}
