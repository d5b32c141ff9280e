/**
 * What has to be settled before a battery is charged: whether its acid is frozen, and whether a lithium one has run down too far.
 *
 * What was read speaks until a charge has followed it; without a reading, the high-loss path on the day of the charge does.
 */
import type { BeforeCharge, PlanStep, Warning } from '../season-plan.ts';
import { formatOne } from '../units/index.ts';
import { type Manner, writtenDate } from '../written.ts';
import { MARGIN_K } from './care.ts';
import { round } from './charge.ts';
import { freezingPointC } from './freezing.ts';
import { batteryName } from './name.ts';
import type { JudgedReading } from './readings.ts';
import type { BatteryUnit } from './unit.ts';
import { openCircuitVoltage } from './voltage.ts';

/**
 * A lithium iron phosphate battery that reads less than this lies under the knee of its curve, about 12.8 V at rest [%]: what is left
 * is not told, and its electronics may be about to shut it off. Common practice, from memory.
 */
const RUN_DOWN_PCT = 10;

/** What is done with a battery that may be frozen. Source: OD1002, a frozen battery is thawed before it is charged; common practice. */
const IF_FROZEN =
  'Bulged, or ice in it: do not charge; thaw it at room temperature first. Cracked, or bulged still: to the collection point.';

/** What a title says of a charge that must not simply be made. */
const IN_SHORT: Record<BeforeCharge['kind'], string> = {
  frozen: 'it may be frozen: look first',
  'run-down': 'not before its maker or a workshop says so',
  low: 'look at it first',
};

/** What has to be settled before a charge, in a few words. */
export const shortBefore = ({ kind }: BeforeCharge): string => IN_SHORT[kind];

/**
 * A step that charges, as it is said where something has to be settled first.
 * @param step - as its procedure has it
 * @param before - what has to be settled
 */
export const lookFirst = (step: Pick<PlanStep, 'title' | 'detail'>, before: BeforeCharge) => ({
  title: `${step.title} (${shortBefore(before)})`,
  detail: [before.text, step.detail].filter(Boolean).join(' '),
});

/** The last reading, where no charge has followed it. */
function lastReading({ calibration, logged, chargedSince }: BatteryUnit): JudgedReading | undefined {
  if (chargedSince) return undefined;
  const last = calibration.readings.filter((reading) => reading.sound).at(-1);
  // What is read on the day of a charge was read before it.
  return last && last.index > (logged.at(-1)?.index ?? Number.NEGATIVE_INFINITY) ? last : undefined;
}

/** How far from freezing the acid was, at the least, when it was read or in a usual year's cold of that month [K]. */
function marginOf({ row, care, rest, designLow }: BatteryUnit, reading: JudgedReading): number {
  const usualC = care.keptAt === 'room' ? reading.temperatureC : designLow.typicalC[rest.month[reading.index]! - 1]!;
  const least = Math.max(0, reading.stateOfChargePct - reading.spreadPct);
  return Math.min(reading.temperatureC, usualC) - freezingPointC(row.id, least);
}

/** Whether the high-loss path of a day comes to the freezing point in a usual year's cold. */
function isPathFrozen({ row, care, rest, designLow }: BatteryUnit, index: number, pct: number): boolean {
  return (
    row.acid !== undefined &&
    care.keptAt === 'machine' &&
    designLow.typicalC[rest.month[index]! - 1]! - freezingPointC(row.id, pct) < MARGIN_K.bringIn
  );
}

/**
 * What the last reading asks for before a charge.
 *
 * Lead–acid: it may be frozen where its freezing point, less what the reading leaves open, is within 10 K of the cold it was in.
 * Lithium: it is surely low where even the upper end of what the reading leaves open is under the threshold.
 * @param unit - the battery
 */
export function foundBefore(unit: BatteryUnit): BeforeCharge | undefined {
  const { row, manner } = unit;
  const reading = lastReading(unit);
  if (!reading) return undefined;
  if (row.acid)
    return reading.stateOfChargePct <= row.thresholdPct && marginOf(unit, reading) < MARGIN_K.warn
      ? { kind: 'frozen', text: `It may be frozen. ${IF_FROZEN}` }
      : undefined;
  if (!(reading.stateOfChargePct + reading.spreadPct < row.thresholdPct)) return undefined;
  if (reading.stateOfChargePct < RUN_DOWN_PCT)
    return {
      kind: 'run-down',
      text: 'Do not charge it before its maker or a workshop has had it checked and said that it may be charged: a lithium battery that was run down can catch fire on the charger.',
    };
  const knee = round(openCircuitVoltage(row.id, RUN_DOWN_PCT, reading.temperatureC), 1, manner.locale);
  return {
    kind: 'low',
    text: `Do not just charge it: leads off, case whole and not swollen, warmed through; then on a charger made for it, with somebody near. Does that not begin, or the battery get warm: stop, and have it checked by its maker or a workshop. Under about ${knee} V at rest it is not charged at all without its maker's word.`,
  };
}

/**
 * What a charge that is no trip's own asks for before it, such as that of the start-up, as things stand on a day.
 * @param unit - the battery
 * @param highPct - state of charge by day on the high-loss path [%]
 */
export function beforeNextCharge(unit: BatteryUnit, highPct: Float64Array): BeforeCharge | undefined {
  const found = foundBefore(unit);
  if (found) return found;
  const today = Math.min(unit.firstDay - unit.rest.firstDay, unit.rest.days);
  return today > 0 && !unit.chargedSince && isPathFrozen(unit, today, highPct[today]!)
    ? { kind: 'frozen', text: `At its fastest loss it may be frozen. ${IF_FROZEN}` }
    : undefined;
}

/**
 * What a planned charge asks for before it.
 * @param unit - the battery
 * @param index - day of the charge in the rest
 * @param highPct - state of charge before it on the high-loss path [%]
 * @param isFirst - no other charge is planned before it
 */
export function beforeCharge(
  unit: BatteryUnit,
  index: number,
  highPct: number,
  isFirst: boolean,
): BeforeCharge | undefined {
  const found = isFirst ? foundBefore(unit) : undefined;
  if (found) return found;
  return isPathFrozen(unit, index, highPct)
    ? { kind: 'frozen', text: `At its fastest loss it may be frozen by then. ${IF_FROZEN}` }
    : undefined;
}

/**
 * The warning of a battery that may be frozen or run down, by its last reading.
 * @param unit - the battery
 */
export function beforeChargeWarnings(unit: BatteryUnit): Warning[] {
  const found = foundBefore(unit);
  if (!found) return [];
  const { row, manner, machine } = unit;
  const { volts, date, temperatureC, stateOfChargePct, spreadPct, shutOff } = lastReading(unit)!;
  const said = `${formatOne(volts, 'V', manner, 2)} at ${degrees(temperatureC, manner)} on ${writtenDate(date, manner.locale)}`;
  const own = `${batteryName(machine)} read ${said}`;
  const read = `${own}, about ${round(stateOfChargePct, 0, manner.locale)} %`;
  const common = { machine: machine.id, about: 'battery' };
  if (found.kind === 'frozen') {
    const least = Math.max(0, stateOfChargePct - spreadPct);
    return [
      {
        ...common,
        level: 'danger',
        text: `${read}: so low its acid freezes from about ${degrees(freezingPointC(row.id, least), manner)} on, and it may be frozen. Charged while frozen it can burst.`,
        act: `Look at it before any charger goes on. ${IF_FROZEN} Only thawed and whole is it charged full.`,
      },
    ];
  }
  return [
    {
      ...common,
      level: found.kind === 'run-down' ? 'danger' : 'warning',
      text: shutOff
        ? `${own}: so reads a lithium battery that its own electronics have shut off.`
        : `${read}, and surely under the ${row.thresholdPct} % below which its own electronics may shut it off for good.`,
      act:
        found.kind === 'run-down'
          ? `${found.text} Until then: leads off, no charger on, out of the frost, on ground that cannot burn.${shutOff ? ' A meter without contact reads so too: try it on another battery.' : ''} Swollen, warm or smelling: outside, away from buildings, and to a collection point that takes damaged ones.`
          : `${found.text} Then look for what drew on it.`,
    },
  ];
}

const degrees = (value: number, manner: Manner) => formatOne(value, '°C', manner);
