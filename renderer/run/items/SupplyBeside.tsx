/** What the sheet asks of the supply for the emitters on this site, in both units, and what the boiler left the works with. */
import type { EmitterKind, ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { supplyForEmitter } from '../../../domain/procedure/supplyForEmitter.ts';
import { celsiusToFahrenheit, kelvinDifferenceToFahrenheitDifference } from '../../../domain/quantity/conversions.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { QuantityText } from '../../kit/QuantityText.tsx';
import { useRun } from '../state/RunContext.ts';
import { sourceWords } from '../words/findingWords.ts';

const SUPPLY_SETTINGS: readonly QuantityKey[] = ['supplySetpointC', 'resetDesignSupplyC', 'manifoldSupplyC'];

export function SupplyBeside({ item }: { readonly item: ItemOf<'read'> }) {
  const { view } = useRun();
  const { sheet, record } = view;
  const factory = sheet.factoryDefaults.filter((one) => one.quantity === item.quantity);
  const showsEmitters = SUPPLY_SETTINGS.includes(item.quantity);
  if (!showsEmitters && factory.length === 0) return null;
  return (
    <div className="run-beside">
      {showsEmitters && record.site.emitters.length === 0 ? <p>No emitters on file for this site.</p> : null}
      {showsEmitters && record.site.emitters.length > 0 ? (
        <table className="run-emitters">
          <thead>
            <tr>
              <th scope="col">Emitter here</th>
              <th scope="col">Supply</th>
              <th scope="col">Supply minus return</th>
            </tr>
          </thead>
          <tbody>
            {record.site.emitters.map((emitter) => {
              const row = supplyForEmitter(sheet, emitter);
              return (
                <tr key={emitter}>
                  <th scope="row">{EMITTER_WORDS[emitter]}</th>
                  {row === undefined ? (
                    <td colSpan={2}>nothing on the sheet</td>
                  ) : (
                    <>
                      <td>
                        <b>{temperatures(row.minSupplyC, row.maxSupplyC)}</b>
                        <span className="run-emitter-note">
                          {row.note === undefined ? '' : `${row.note} · `}
                          {sourceWords(row.basis)}
                        </span>
                      </td>
                      <td>{differences(row.deltaTMinK, row.deltaTMaxK)}</td>
                    </>
                  )}
                </tr>
              );
            })}
          </tbody>
        </table>
      ) : null}
      {factory.map((one) => (
        <p key={one.value}>
          Factory default:{' '}
          <b>
            <QuantityText quantity={one.quantity} value={one.value} />
          </b>
          . Left as it is, it needs a reason.
        </p>
      ))}
    </div>
  );
}

export const EMITTER_WORDS: Record<EmitterKind, string> = {
  'floor-slab': 'Floor, slab',
  'floor-under-wood': 'Floor under wood',
  'panel-radiators': 'Panel radiators',
  'old-radiators': 'Old radiators',
  'fin-tube-baseboard': 'Fin-tube baseboard',
  'fan-coil': 'Fan coil',
  'hot-water-cylinder': 'Hot-water cylinder',
};

function temperatures(minC: number, maxC: number): string {
  return `${whole(minC)}–${whole(maxC)} °C (${whole(celsiusToFahrenheit(minC))}–${whole(celsiusToFahrenheit(maxC))} °F)`;
}

function differences(minK: number, maxK: number): string {
  const [minF, maxF] = [minK, maxK].map(kelvinDifferenceToFahrenheitDifference);
  return `${whole(minK)}–${whole(maxK)} K (${whole(minF ?? 0)}–${whole(maxF ?? 0)} °F)`;
}

function whole(value: number): string {
  return formatNumber(value, 0);
}
