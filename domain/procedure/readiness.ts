/**
 * What a site must have before a startup is booked, asked on the phone one to three days ahead and again the same
 * morning. "Ready" said by a builder is not ready seen, so each item also says what to write down.
 */

/** What goes wrong when the item is not so: a wasted trip, no flame, a test that cannot be done, or papers that wait. */
export type ReadinessHinders = 'visit' | 'firing' | 'leaving' | 'testing' | 'papers';

export type ReadinessItem = {
  readonly key: string;
  readonly label: string;
  /** What to note beside yes or no, with its unit. */
  readonly note: string;
  readonly hinders: ReadinessHinders;
  /** No firm booking before it is answered yes or not applicable; a pencilled one may be kept. */
  readonly blocksBooking: boolean;
  /** Seen on a photo asked for on the phone: boiler front, vent outside, gas meter. */
  readonly photoHelps: boolean;
  readonly caution: string | null;
};

export const READINESS_ITEMS: readonly ReadinessItem[] = [
  item('access', 'Somebody opens, and we can get in', {
    note: 'who, phone, gate or alarm, parking, pets',
    hinders: 'visit',
    blocksBooking: true,
    caution: 'Site, customer, payer and occupant may be four different people',
  }),
  item('boiler-known', 'Boiler known: maker, model, serial, rated input, fuel on the plate', {
    note: 'kW or Btu/h; photo of the plate',
    hinders: 'firing',
    blocksBooking: true,
    photoHelps: true,
    caution: 'Plate, tag and carton can disagree',
  }),
  item('fuel-on-site', 'Fuel on site is the fuel on the plate, or the conversion kit is there', {
    note: 'natural gas, propane, butane mix; regulator stages; tank size and level in %',
    hinders: 'firing',
    blocksBooking: true,
    caution: 'Another fuel on the plate needs a conversion on record',
  }),
  item('gas-live', 'Gas live: meter set, pipe tested, valve at the boiler', {
    note: 'date of the pipe test',
    hinders: 'visit',
    blocksBooking: true,
    photoHelps: true,
    caution: 'On new builds the meter is often not set',
  }),
  item('gas-load', 'Meter or tank can carry every appliance', {
    note: 'inputs of all gas appliances in kW or Btu/h; meter size in m³/h or ft³/h',
    hinders: 'testing',
    caution: 'Sum above the meter: call the utility before the visit',
  }),
  item('power', 'Permanent power at the boiler', {
    note: 'voltage, earth and polarity checked',
    hinders: 'firing',
    blocksBooking: true,
    caution: 'The site supply drops under load',
  }),
  item('vent', 'Vent and air intake finished to the outside', {
    note: 'kit, material, length in m or ft, elbows, seals, hatches where hidden',
    hinders: 'firing',
    blocksBooking: true,
    photoHelps: true,
    caution: 'Hidden vent: where are the hatches?',
  }),
  item('condensate', 'Condensate drain finished', {
    note: 'trap, route, fall, neutraliser, any run outside',
    hinders: 'firing',
    blocksBooking: true,
    caution: 'A run outside freezes',
  }),
  item('water', 'System filled, tested, flushed', {
    note: 'treatment product, glycol',
    hinders: 'testing',
    caution: 'Filling it on the day adds 1–3 hours',
  }),
  item('controls', 'Controls wired: thermostats, sensors, actuators', {
    note: 'outdoor sensor placed, actuator power',
    hinders: 'leaving',
    caution: 'A smart control may need the network',
  }),
  item('heat-load', 'Heat can go somewhere: emitters fitted, zones open, hot water drawn', {
    note: 'kW it can take; floor finished?',
    hinders: 'testing',
    caution: 'In summer: open windows, use hot water',
  }),
  item('permit', 'Permit and inspection', {
    note: 'number, status',
    hinders: 'papers',
    caution: 'Some places want the inspection first',
  }),
  item('manual', "Maker's sheet for this exact model is on the laptop", {
    note: 'file and revision',
    hinders: 'firing',
    blocksBooking: true,
    caution: 'No signal in the boiler room',
  }),
  item('technician', 'Technician: licence for this fuel and size, model training, analyser in date', {
    note: 'dates',
    hinders: 'visit',
    blocksBooking: true,
  }),
];

function item(
  key: string,
  label: string,
  details: Pick<ReadinessItem, 'note' | 'hinders'> & Partial<ReadinessItem>,
): ReadinessItem {
  return { key, label, blocksBooking: false, photoHelps: false, caution: null, ...details };
}

/** The words of an item; the key itself for one that this version no longer asks. */
export function readinessLabel(key: string): string {
  return READINESS_ITEMS.find((item) => item.key === key)?.label ?? key;
}
