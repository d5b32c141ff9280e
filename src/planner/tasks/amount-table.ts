/**
 * Every {name} that a procedure's text can use, one row each, under what it means.
 *
 * `when` says which machines have the amount: a step that names it must ask for no less, which the content check holds.
 * `each` marks amounts that exist only inside a step repeated for that thing.
 */
import type { StepEach, When } from '../household.ts';

export interface AmountRow {
  name: string;
  /** Unit of the plan; "text" for words, "" for a count. */
  unit: string;
  when: When;
  each?: StepEach;
  /** How it is printed where it rests on what was assumed; "{}" is the figure. */
  assumed?: string;
}

const MANUAL = 'about {} (assumed: the manual’s figure goes before it)';
const COUNTED = '{}, assumed';
const PLACARD = 'what the placard or manual says (about {} is usual for this kind)';

const ANY: When = {};
const FUEL: When = { fuel: { present: true } };
const FILL: When = { fuel: { choice: 'fill' } };
const LEAVE: When = { fuel: { choice: 'leave' } };
const DRAIN: When = { fuel: { choice: 'drain' } };
const COOLANT: When = { coolant: { present: true } };
const BATTERY: When = { battery: { present: true } };
const DRIVE: When = { driveBattery: { present: true } };
const BAG: When = { corrosion: { bag: true } };

export const AMOUNTS: readonly AmountRow[] = [
  // Name of the machine.
  row('machine', 'text', ANY),
  // What its 12 V battery is called: "12 V battery" beside a drive battery, else "battery".
  row('battery', 'text', ANY),
  // Name of the place where it rests.
  row('place', 'text', ANY),
  // Last day of use, written out.
  row('lastUse', 'text', ANY),
  // First day of use after the rest, written out.
  row('firstUse', 'text', ANY),
  // Length of the rest.
  row('restDays', 'd', ANY),
  // Temperature above which washing is worth it: 5 °C, common practice.
  row('washAbove', '°C', ANY),
  // The freezing point of water, 0 °C.
  row('zero', '°C', ANY),
  // Distance after which fasteners and leaks are looked at again: 50 km, common practice.
  row('recheck', 'km', ANY),
  // A mouse passes a gap of 6 mm (CDC, as reproduced by others).
  row('mouseGap', 'mm', ANY),
  // Name of the machine that starts up as this one is laid up.
  row('otherMachine', 'text', { swap: true }),
  // Engine oil, with the filter where there is one.
  row('oil', 'L', { engine: { oil: true } }, undefined, MANUAL),
  // What to fill by.
  row('oilBy', 'text', { engine: { oil: true } }),
  // Number of cylinders.
  row('cylinders', '', ANY, undefined, COUNTED),
  // Number of exhaust outlets.
  row('outlets', '', { chassis: { exhaust: true } }, undefined, COUNTED),
  // Number of grease nipples.
  row('greasePoints', '', { chassis: { greasePoints: true } }, undefined, COUNTED),
  // Capacity of the tank.
  row('tank', 'L', FUEL),
  // Number of float bowls.
  row('bowls', '', { fuel: { bowls: true } }, undefined, COUNTED),
  // Number of fuel taps.
  row('taps', '', { fuel: { tap: ['vacuum', 'manual'] } }),
  // Room in one approved can of the household.
  row('can', 'L', FUEL),
  // Petrol to add on the fill day.
  row('addFuel', 'L', FILL),
  // Petrol in the tank over the rest, once it is filled or drawn off.
  row('planFuel', 'L', FILL),
  // Petrol to draw off a tank that is too full for the warmth of the store.
  row('drawOffFuel', 'L', { fuel: { choice: 'fill', room: 'over' } }),
  // Stabiliser for the whole tank, by the household's own product.
  row('stabiliserDose', 'mL', {
    fuel: { choice: 'fill', stabiliser: true },
  }),
  // Idling until treated petrol has filled line and bowls.
  row('runMinutes', 'min', FILL),
  // A third of the tank: two parts fresh petrol fit on it.
  row('lowFuel', 'L', LEAVE),
  // Petrol that comes out of the tank.
  row('drained', 'L', DRAIN),
  // Approved cans for the drained petrol.
  row('cans', '', DRAIN),
  // Day by which the drained petrol is to be used up.
  row('drainedUseBy', 'text', DRAIN),
  // Days between which the petrol in the tank reaches its age limit.
  row('fuelUseBy', 'text', FUEL),
  // What to do with the petrol in the tank at first use.
  row('springFuel', 'text', FUEL),
  // Local limit on petrol kept at home, as far as it is known.
  row('fuelLimit', 'text', FUEL),
  // Coolant in the whole system.
  row('coolantVolume', 'L', COOLANT),
  // Freezing point that the coolant is to have: below the cold of the store, and that of a third of glycol at the most.
  row('coolantNeed', '°C', COOLANT),
  // Coolant to drain and to replace.
  row('coolantSwap', 'L', { coolant: { swap: true } }),
  // Glycol in what is filled in, by volume.
  row('coolantRefill', '%', COOLANT),
  // Rated capacity.
  row('batteryCapacity', 'Ah', BATTERY),
  // Highest current on a charger's label: battery/charge.ts.
  row('chargeCurrent', 'A', BATTERY),
  // Charge below which the battery is charged again.
  row('threshold', '%', BATTERY),
  // The same as the volts that surely tell it, at rest and room warmth.
  row('thresholdVolts', 'text', BATTERY),
  // Name of the warm room.
  row('batteryRoom', 'text', { battery: { keptAt: 'room' } }),
  // Charge at which a drive battery is left over the rest, at the least and at the most.
  row('driveLow', '%', DRIVE),
  row('driveHigh', '%', DRIVE),
  // Charge under which a drive battery is charged again.
  row('driveRecharge', '%', DRIVE),
  // Units of desiccant for the bag: the larger of those by two standards.
  row('desiccant', '', BAG),
  // Units of desiccant for the bag by DIN 55474.
  row('desiccantDin', '', BAG),
  // Units of desiccant for the bag by MIL-STD-2073.
  row('desiccantMil', '', BAG),
  // Lower relative humidity to hold with a dehumidifier.
  row('dryLow', '%', { corrosion: { dry: true } }),
  // Upper relative humidity to hold with a dehumidifier.
  row('dryHigh', '%', { corrosion: { dry: true } }),
  // Which tyres.
  row('position', 'text', ANY, 'tyre'),
  // Pressure to set for the rest.
  row('setPressure', 'kPa', ANY, 'tyre', PLACARD),
  // Normal pressure.
  row('normalPressure', 'kPa', ANY, 'tyre', PLACARD),
  // Pressure to expect at start-up.
  row('expectedPressure', 'kPa', ANY, 'tyre', 'about {}'),
  // To put back on that day, expected.
  row('chargeAh', 'Ah', ANY, 'charge'),
  // Time on the charger, expected and at most.
  row('chargeTime', 'text', ANY, 'charge'),
  // Last day for this charge.
  row('chargeLatest', 'text', ANY, 'charge'),
  // What is due.
  row('service', 'text', ANY, 'service'),
  // Why it is due.
  row('serviceWhy', 'text', ANY, 'service'),
  // Which paper.
  row('paper', 'text', ANY, 'paper'),
  // Its date.
  row('paperDate', 'text', ANY, 'paper'),
  // Which paper is suspended over the rest.
  row('pausedPaper', 'text', ANY, 'paused-paper'),
];

function row(name: string, unit: string, when: When, each?: StepEach, assumed?: string): AmountRow {
  return { name, unit, when, ...(each && { each }), ...(assumed && { assumed }) };
}

/** Every name of the table. */
export const AMOUNT_NAMES: readonly string[] = AMOUNTS.map((r) => r.name);

/** The {names} in a text, in the order they stand. */
export function namesIn(text: string): string[] {
  return [...text.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1]!);
}
