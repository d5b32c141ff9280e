/**
 * Every {name} that a procedure's text can use, one row each.
 *
 * `when` says which machines have the amount: a step that names it must ask for no less, which the content check holds.
 * `each` marks amounts that exist only inside a step repeated for that thing.
 */
import type { StepEach, When } from '../household.ts';

export interface AmountRow {
  name: string;
  /** Unit of the plan; "text" for words, "" for a count. */
  unit: string;
  meaning: string;
  when: When;
  each?: StepEach;
}

const ANY: When = {};
const FUEL: When = { fuel: { present: true } };
const FILL: When = { fuel: { choice: 'fill' } };
const DRAIN: When = { fuel: { choice: 'drain' } };
const COOLANT: When = { coolant: { present: true } };
const BATTERY: When = { battery: { present: true } };
const BAG: When = { corrosion: { bag: true } };

export const AMOUNTS: readonly AmountRow[] = [
  row('machine', 'text', 'Name of the machine.', ANY),
  row('place', 'text', 'Name of the place where it rests.', ANY),
  row('lastUse', 'text', 'Last day of use, written out.', ANY),
  row('firstUse', 'text', 'First day of use after the rest, written out.', ANY),
  row('restDays', 'd', 'Length of the rest.', ANY),
  row('washAbove', '°C', 'Temperature above which washing is worth it: 5 °C, common practice.', ANY),
  row('zero', '°C', 'The freezing point of water, 0 °C.', ANY),
  row('recheck', 'km', 'Distance after which fasteners and leaks are looked at again: 50 km, common practice.', ANY),
  row('mouseGap', 'mm', 'A mouse passes a gap of 6 mm (CDC, as reproduced by others).', ANY),
  row('otherMachine', 'text', 'Name of the machine that wakes as this one goes to sleep.', { swap: true }),
  row('oil', 'L', 'Engine oil, with the filter where there is one.', { engine: { oil: true } }),
  row('cylinders', '', 'Number of cylinders.', ANY),
  row('outlets', '', 'Number of exhaust outlets.', { chassis: { exhaust: true } }),
  row('greasePoints', '', 'Number of grease nipples.', { chassis: { greasePoints: true } }),
  row('tank', 'L', 'Capacity of the tank.', FUEL),
  row('bowls', '', 'Number of float bowls.', { fuel: { bowls: true } }),
  row('taps', '', 'Number of fuel taps.', { fuel: { tap: ['vacuum', 'manual'] } }),
  row('can', 'L', 'Room in one approved can of the household.', FUEL),
  row('addFuel', 'L', 'Petrol to add on the fill day.', FILL),
  row('stabiliserDose', 'mL', "Stabiliser for the whole tank, by the household's own product.", {
    fuel: { choice: 'fill', stabiliser: true },
  }),
  row('runMinutes', 'min', 'Idling until treated petrol has filled line and bowls.', FILL),
  row('drained', 'L', 'Petrol that comes out of the tank.', DRAIN),
  row('cans', '', 'Approved cans for the drained petrol.', DRAIN),
  row('drainedUseBy', 'text', 'Day by which the drained petrol is to be used up.', DRAIN),
  row('fuelUseBy', 'text', 'Days between which the petrol in the tank reaches its age limit.', FUEL),
  row('springFuel', 'text', 'What to do with the petrol in the tank at first use.', FUEL),
  row('fuelLimit', 'text', 'Local limit on petrol kept at home, as far as it is known.', FUEL),
  row('coolantVolume', 'L', 'Coolant in the whole system.', COOLANT),
  row('coolantNeed', '°C', 'Temperature that the coolant must stand.', COOLANT),
  row('coolantSwap', 'L', 'Coolant to drain and to replace.', { coolant: { swap: true } }),
  row('coolantRefill', '%', 'Glycol in what is filled in, by volume.', COOLANT),
  row('batteryCapacity', 'Ah', 'Rated capacity.', BATTERY),
  row('chargeCurrent', 'A', 'Highest charging current, a tenth of the capacity: common practice.', BATTERY),
  row('threshold', '%', 'Charge below which the battery is charged again.', BATTERY),
  row('batteryRoom', 'text', 'Name of the warm room.', { battery: { keptAt: 'room' } }),
  row('desiccantDin', '', 'Units of desiccant for the bag by DIN 55474.', BAG),
  row('desiccantMil', '', 'Units of desiccant for the bag by MIL-STD-2073.', BAG),
  row('dryLow', '%', 'Lower relative humidity to hold with a dehumidifier.', { corrosion: { dry: true } }),
  row('dryHigh', '%', 'Upper relative humidity to hold with a dehumidifier.', { corrosion: { dry: true } }),
  row('position', 'text', 'Which tyres.', ANY, 'tyre'),
  row('setPressure', 'kPa', 'Pressure to set for the rest.', ANY, 'tyre'),
  row('normalPressure', 'kPa', 'Normal pressure.', ANY, 'tyre'),
  row('expectedPressure', 'kPa', 'Pressure to expect at start-up.', ANY, 'tyre'),
  row('chargeAh', 'Ah', 'To put back on that day, expected.', ANY, 'charge'),
  row('chargeHours', 'h', 'Hours on the charger, expected.', ANY, 'charge'),
  row('chargeHoursMost', 'h', 'Hours on the charger at most.', ANY, 'charge'),
  row('chargeLatest', 'text', 'Last day for this charge.', ANY, 'charge'),
  row('service', 'text', 'What is due.', ANY, 'service'),
  row('serviceWhy', 'text', 'Why it is due.', ANY, 'service'),
  row('paper', 'text', 'Which paper.', ANY, 'paper'),
  row('paperDate', 'text', 'Its date.', ANY, 'paper'),
  row('pausedPaper', 'text', 'Which paper is suspended over the rest.', ANY, 'paused-paper'),
];

function row(name: string, unit: string, meaning: string, when: When, each?: StepEach): AmountRow {
  return each ? { name, unit, meaning, when, each } : { name, unit, meaning, when };
}

/** Every name of the table. */
export const AMOUNT_NAMES: readonly string[] = AMOUNTS.map((r) => r.name);

/** The {names} in a text, in the order they stand. */
export function namesIn(text: string): string[] {
  return [...text.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1]!);
}
