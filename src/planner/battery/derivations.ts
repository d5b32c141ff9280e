import { daysBetween } from '../dates.ts';
import type { BatteryPlan, Charge, Derivation } from '../season-plan.ts';
import { inUnits } from '../units/index.ts';
import { counted, writtenMonth } from '../written.ts';
import { LARGEST_FITTED_FRACTION } from './acid.ts';
import { largestChargeA } from './charge.ts';
import { freezingPoint, specificGravity } from './freezing.ts';
import { temperatureFactor } from './loss.ts';
import type { BatteryUnit } from './unit.ts';
import { openCircuitVoltage } from './voltage.ts';

const tenth = (x: number) => Math.round(x * 10) / 10;
const thousandth = (x: number) => Math.round(x * 1000) / 1000;

/**
 * How the figures of a battery came about.
 * @param unit - the battery
 * @param charges - its charges
 * @param freezingByMonth - its freezing margins
 * @param highPath - state of charge by day on the high-loss path [%]
 */
export function derivationsOf(
  unit: BatteryUnit,
  charges: readonly Charge[],
  freezingByMonth: BatteryPlan['freezingByMonth'],
  highPath: Float64Array,
): Derivation[] {
  return [
    selfDischarge(unit),
    ...(charges[0] ? [firstCharge(unit, charges[0]), amount(unit, charges[0])] : []),
    freezing(unit, freezingByMonth, highPath),
    voltage(unit),
  ];
}

function selfDischarge(unit: BatteryUnit): Derivation {
  const { battery, curve, rates, rest, row, calibration, leadOn } = unit;
  const mean = curve.temperatureC.reduce((a, b) => a + b, 0) / curve.temperatureC.length;
  const factor = temperatureFactor(mean, battery.doublingK.value);
  const perMonth = rates.expected.selfPctPerH * 720;
  const drain = rates.expected.drainPctPerH * 720;
  return {
    method: 'battery.self-discharge',
    equation: 'dS/dt = −[ r20·2^((T − 20)/θ) + 100·I/(C·h) ], summed hour by hour; times the multiplier from readings',
    inputs: [
      {
        name: 'r20, self-discharge at 20 °C: expected',
        value: battery.selfDischargePctPerMonth.value,
        unit: '% in 30 d',
      },
      { name: 'r20: low', value: battery.selfDischargePctPerMonth.low, unit: '% in 30 d' },
      { name: 'r20: high', value: battery.selfDischargePctPerMonth.high, unit: '% in 30 d' },
      { name: 'θ, step that doubles it', value: battery.doublingK.value, unit: 'K' },
      { name: 'mean temperature of the rest', value: tenth(mean), unit: '°C' },
      { name: 'I, key-off drain', value: leadOn ? battery.drainMA.value : 0, unit: 'mA' },
      { name: 'drain of the battery’s own circuit', value: row.managementDrainMA, unit: 'mA' },
      { name: 'C, capacity', value: battery.capacityAh, unit: 'Ah' },
      { name: 'h, health', value: battery.health.value, unit: '' },
      { name: 'multiplier from readings', value: thousandth(calibration.result?.multiplier ?? 1), unit: '' },
      { name: 'loss in 30 d at 20 °C', value: tenth(perMonth + drain), unit: '%' },
    ],
    result: { value: tenth(perMonth * factor + drain), unit: '% in 30 d at the mean temperature of the rest' },
    sources: [...row.sources],
    caveat: `The path sums the real hours of ${counted(rest.days, 'day')}, and warm hours count for more than the mean temperature says.`,
  };
}

function firstCharge(unit: BatteryUnit, charge: Charge): Derivation {
  const { machine, row, battery } = unit;
  const moved = daysBetween(charge.date, charge.earliest);
  return {
    method: 'battery.first-charge',
    equation:
      'first day at whose end S on the high-loss path is at or under the threshold; then the latest trip on or before it',
    inputs: [
      { name: 'S at the end of the last day of use', value: battery.startPct.value, unit: '%' },
      { name: 'last day of use', value: machine.season.lastUse, unit: '' },
      { name: 'threshold', value: row.thresholdPct, unit: '%' },
      { name: 'high-loss date', value: charge.earliest, unit: '' },
      { name: 'expected date', value: charge.expected ?? 'not before first use', unit: '' },
      { name: 'moved earlier by', value: moved, unit: 'd' },
    ],
    result: { value: charge.date, unit: '' },
    sources: [...row.sources.filter((s) => s.includes('threshold'))],
    caveat: 'Placed on the high-loss path: it is likelier early than late.',
  };
}

function amount(unit: BatteryUnit, charge: Charge): Derivation {
  const { battery, row } = unit;
  return {
    method: 'battery.charge',
    equation: 'Ah = C·h·(S_target − S)/100 / η;  hours = Ah / min(charger, largest current) + absorption',
    inputs: [
      { name: 'C, capacity', value: battery.capacityAh, unit: 'Ah' },
      { name: 'h, health', value: battery.health.value, unit: '' },
      { name: 'S_target', value: row.chargeToPct, unit: '%' },
      { name: 'η, charge efficiency', value: row.chargeEfficiency, unit: '' },
      { name: 'absorption', value: row.absorptionH, unit: 'h' },
      { name: 'largest current reckoned with', value: thousandth(largestChargeA(battery)), unit: 'A' },
      { name: 'at most (high-loss path)', value: tenth(charge.ampHoursMost), unit: 'Ah' },
      { name: 'hours', value: tenth(charge.hours), unit: 'h' },
      { name: 'hours at most', value: tenth(charge.hoursMost), unit: 'h' },
      { name: 'day of the charge', value: charge.date, unit: '' },
    ],
    result: { value: tenth(charge.ampHours), unit: 'Ah' },
    sources: [
      ...row.sources.filter((s) => s.includes('efficiency')),
      `largest current, ${row.acid ? 'a tenth' : 'half'} of the capacity: common practice`,
    ],
  };
}

function freezing(unit: BatteryUnit, months: BatteryPlan['freezingByMonth'], highPath: Float64Array): Derivation {
  const { battery, row, rest, designLow, care } = unit;
  const worst = months.reduce((a, b) => (b.marginK < a.marginK ? b : a));
  let lowest = 100;
  for (let i = 0; i <= rest.days; i++) if (rest.month[i] === worst.month) lowest = Math.min(lowest, highPath[i]!);
  const point = freezingPoint(battery.chemistry, lowest);
  const gravity = specificGravity(battery.chemistry, lowest);
  const said = (text: string) => ({ value: inUnits(text, unit.manner), unit: '' });
  if (!row.acid || gravity === undefined)
    return {
      method: 'battery.freezing',
      equation: 'margin = coldest to be reckoned with − lowest storage temperature',
      inputs: [
        { name: 'coldest to be reckoned with', value: tenth(worst.designLowC), unit: '°C' },
        { name: 'lowest storage temperature', value: point.temperatureC, unit: '°C' },
        { name: 'month', value: writtenMonth(worst.month, unit.manner.locale), unit: '' },
      ],
      result: { value: tenth(worst.marginK), unit: 'K' },
      sources: [...row.sources],
      caveat:
        'There is no water in it to freeze and burst the case; the limit is that of cell datasheets (from memory).',
    };
  return {
    method: 'battery.freezing',
    equation:
      'SG = SG_empty + (SG_full − SG_empty)·S/100 → mass fraction w by density → T_f(w); margin = coldest to be reckoned with − T_f',
    inputs: [
      { name: 'month', value: writtenMonth(worst.month, unit.manner.locale), unit: '' },
      { name: 'S, lowest of that month on the high-loss path', value: tenth(lowest), unit: '%' },
      { name: `SG at ${row.acid.referenceC} °C`, value: thousandth(gravity), unit: '' },
      {
        name: 'freezing point',
        ...(point.atOrBelow ? said('below {-50 °C}') : { value: tenth(point.temperatureC), unit: '°C' }),
      },
      { name: 'coldest to be reckoned with', value: tenth(worst.designLowC), unit: '°C' },
    ],
    result: point.atOrBelow ? said(`at least {${tenth(worst.marginK)} K}`) : { value: tenth(worst.marginK), unit: 'K' },
    sources: [
      'CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions: freezing points, fitted',
      'density of sulfuric acid: NCAR CARMA sulfate_utils',
      row.acid.source,
      care.keptAt === 'room' ? 'the room’s temperature as given' : designLow.basis,
    ],
    caveat: point.atOrBelow
      ? `Acid above ${LARGEST_FITTED_FRACTION * 100} % by mass: no published freezing point is used, only that it lies ${said('below {-50 °C}').value}.`
      : undefined,
  };
}

function voltage(unit: BatteryUnit): Derivation {
  const { battery, row, curve, calibration } = unit;
  const last = calibration.readings.filter((r) => r.usable).at(-1);
  const at = last?.temperatureC ?? tenth(curve.temperatureC[curve.temperatureC.length >> 1]!);
  return {
    method: 'battery.voltage',
    equation: 'S from the table of resting voltages, linear between its points, at the battery’s temperature',
    inputs: [
      { name: 'temperature', value: at, unit: '°C' },
      { name: 'full', value: thousandth(openCircuitVoltage(battery.chemistry, 100, at)), unit: 'V' },
      {
        name: `at the threshold of ${row.thresholdPct} %`,
        value: thousandth(openCircuitVoltage(battery.chemistry, row.thresholdPct, at)),
        unit: 'V',
      },
      ...(last
        ? [
            { name: 'last reading', value: last.volts, unit: 'V' },
            { name: 'read on', value: last.date, unit: '' },
          ]
        : []),
    ],
    result: last
      ? { value: `${tenth(last.stateOfChargePct)} ± ${tenth(last.spreadPct)}`, unit: '%' }
      : { value: `± ${row.voltage.spreadPct}`, unit: '% for a rested reading' },
    sources: [row.voltage.source, 'rest before a reading, 3 h, better 8 h: TM 9-6115-730-24, WP 0050'],
    caveat: row.acid
      ? undefined
      : 'The voltage is flat over most of the charge: a coulomb count, or a charge to full, tells more.',
  };
}
