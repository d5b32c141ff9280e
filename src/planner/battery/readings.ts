import { dayNumber } from '../dates.ts';
import type { Battery, IsoDate, Reading } from '../household.ts';
import type { BatteryPlan } from '../season-plan.ts';
import { round } from './charge.ts';
import type { Rest } from './rest.ts';
import { openCircuitVoltage, stateOfChargeFromVoltage } from './voltage.ts';

/** TM 9-6115-730-24, WP 0050: at least 3 h at rest, better 8 h. */
export const REST_H = { least: 3, better: 8 };
/** A reading between the two leaves half as much again open; common practice. */
const SHORT_REST_FACTOR = 1.5;
/** A resting 12 V battery reads inside this, unless it is no resting 12 V battery [V]. */
const POSSIBLE_V = { low: 6, high: 15 };
/**
 * Under this a lithium battery's own electronics have shut it off: nothing but a trace is left at its posts. Cells of less than
 * 1.5 V are no cells that rest. Common practice, from memory [V].
 */
const SHUT_OFF_V = 6;
/** Above full by more than this, charge still sits on the plates or the charger is on [V]. */
const SURFACE_V = 0.15;
/** One cell of six. A dead one is missed to within a third of a volt [V]. */
const CELL_V = { value: 2.1, within: 0.35 };
/** A reading with what was found about it. */
export type JudgedReading = BatteryPlan['readings'][number] & {
  index: number;
  inRest: boolean;
  /** Of this rest, not of a day to come, and a voltage and a temperature that can be: low is low, rested or not. */
  sound: boolean;
  cellShort: boolean;
  /** Of a lithium battery that its own electronics have shut off. */
  shutOff: boolean;
};

/**
 * Judges one reading: what state of charge it shows, and whether it may be used.
 * @param battery - battery
 * @param reading - as logged
 * @param index - its day in the rest
 * @param days - days of the rest
 * @param asOf - the day the log is read
 * @param locale - language of what is said of it
 * Source: TM 9-6115-730-24, WP 0050 (rest before a reading).
 */
export function judgeReading(
  battery: Battery,
  reading: Reading,
  index: number,
  days: number,
  asOf: IsoDate,
  locale: string,
): JudgedReading {
  const { date, volts, temperatureC, restedH } = reading;
  const inRest = index >= 0 && index <= days;
  const shutOff = battery.chemistry === 'lifepo4' && volts >= 0 && volts < SHUT_OFF_V;
  const base = { date, volts, temperatureC, index, inRest, sound: false, cellShort: false, shutOff };
  const no = (why: string): JudgedReading => ({ ...base, stateOfChargePct: 0, spreadPct: 100, usable: false, why });
  if (!shutOff && !(volts >= POSSIBLE_V.low && volts <= POSSIBLE_V.high))
    return no(`${round(volts, 2, locale)} V is not the voltage of a resting 12 V battery (6 to 15 V); read it again.`);
  if (!(temperatureC >= -60 && temperatureC <= 60))
    return no(
      `${round(temperatureC, 1, locale)} °C is no temperature a battery is read at; write the battery's own temperature.`,
    );
  const found = stateOfChargeFromVoltage(battery.chemistry, volts, temperatureC);
  const shortRest = restedH < REST_H.better;
  const spreadPct = Math.min(100, found.spreadPct * (shortRest ? SHORT_REST_FACTOR : 1));
  const seen = { ...base, stateOfChargePct: found.stateOfChargePct, spreadPct };
  const elsewhen = (why: string): JudgedReading => ({ ...seen, usable: false, why });
  if (!inRest) return elsewhen('taken outside this rest.');
  if (date > asOf) return elsewhen('its date lies in the future.');
  const sound = { ...seen, sound: true };
  const off = (why: string): JudgedReading => ({ ...sound, usable: false, why });
  // How long it rested says nothing of one that is switched off.
  if (shutOff)
    return {
      ...sound,
      usable: true,
      why: 'shut off by its own electronics: do not charge it without its maker’s word.',
    };
  if (!(restedH >= REST_H.least))
    return off(
      `rested ${round(restedH, 1, locale)} h; at least ${REST_H.least} h are needed, better ${REST_H.better} h, before the voltage tells the charge.`,
    );
  if (found.beyondV > SURFACE_V)
    return off(
      `${round(volts, 2, locale)} V is ${round(found.beyondV, 2, locale)} V above full: charge still sits on the plates, or a charger is on; rest it ${REST_H.better} h and read again.`,
    );
  if (isCellShort(battery, volts, temperatureC))
    return {
      ...off(
        `${round(volts, 2, locale)} V is about one cell (2.1 V) short of a charged battery; it says nothing of the loss rate.`,
      ),
      cellShort: true,
    };
  if (found.beyondV < 0)
    return { ...sound, usable: true, why: 'below the empty end of the table: at most that much is left.' };
  return { ...sound, usable: true, why: shortRest ? `rested under ${REST_H.better} h: less sure.` : undefined };
}

/**
 * Judges the readings of a log, by rising day.
 * @param battery - battery
 * @param log - its readings, and the day they are read for
 * @param rest - days of the rest
 */
export function judgeReadings(
  battery: Battery,
  log: { readings: readonly Reading[]; asOf: IsoDate; locale: string },
  rest: Pick<Rest, 'firstDay' | 'days'>,
): JudgedReading[] {
  return log.readings
    .map((r) => judgeReading(battery, r, dayNumber(r.date) - rest.firstDay, rest.days, log.asOf, log.locale))
    .sort((a, b) => a.index - b.index);
}

/** A lead–acid battery that reads one cell less than full. */
function isCellShort(battery: Battery, volts: number, temperatureC: number): boolean {
  if (battery.chemistry === 'lifepo4') return false;
  return Math.abs(openCircuitVoltage(battery.chemistry, 100, temperatureC) - CELL_V.value - volts) <= CELL_V.within;
}
