/**
 * How each published value of tests/published is put to its calculation. The methods page prints what comes out now, and a test
 * holds every row to its tolerance, so that page and tests speak of the same cases.
 */
import {
  acidFreezingPoint,
  chargeAh,
  freezingPointOfGravity,
  HYDROMETER_60F_C,
  openCircuitVoltage,
} from '../battery/index.ts';
import { dewPointC, saturationOverIcePa, saturationOverWaterPa, vapourPressurePa } from '../climate/index.ts';
import { drainAndReplace, freezingPointC } from '../coolant/index.ts';
import { din55474Units, firstYearLossUm, milStd2073BarrierUnits } from '../corrosion/index.ts';
import {
  breathedWaterG,
  expansionPerK,
  expansionRatio,
  waterInHydrocarbonPpm,
  waterTolerancePct,
} from '../fuel/index.ts';
import type { Battery, BatteryChemistry } from '../household.ts';
import { pressureAt } from '../tyres/index.ts';
import { parseQuantity } from '../units/index.ts';

/** A published case as its file holds it. */
export type Case = Record<string, unknown> & { source: string; status: string };

/** One list of published cases and the calculation that answers it. */
export interface Check {
  /** Key of the method. */
  method: string;
  /** File in tests/published, without its ending, and the list in it. */
  file: string;
  list: string;
  unit: string;
  what(c: Case): string;
  published(c: Case): number;
  ours(c: Case): number;
  /** Largest difference that counts as met, in `unit`. */
  tolerance(c: Case): number;
  /** Why it is so large. */
  reason: string;
  /** Cases that the list holds for another purpose. */
  leaveOut?: ((c: Case) => boolean) | undefined;
}

const n = (c: Case, key: string): number => {
  const value = c[key];
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new RangeError(`published case: found ${key} = ${String(value)}, expected a number (${c.source})`);
  return value;
};
/** A figure as a text has it, with the sign of a minus. */
const said = (c: Case, key: string) => String(n(c, key)).replace('-', '−');
const chemistry = (c: Case) => c.chemistry as BatteryChemistry;
/** A battery of which a charge needs no more than chemistry, capacity and health. */
function batteryOf(c: Case): Battery {
  const health = n(c, 'health');
  return {
    chemistry: chemistry(c),
    capacityAh: n(c, 'capacityAh'),
    health: { value: health, low: health, high: health },
  } as Battery;
}
const dose = (c: Case) => ({
  temperatureC: n(c, 'temperatureC'),
  rhPct: n(c, 'rhPct'),
  sulphurDioxideMgM2D: n(c, 'so2'),
  chlorideMgM2D: n(c, 'chloride'),
});
const POUND_KG = parseQuantity('1 lb', 'mass') as number;
const INCH2_M2 = 0.0254 ** 2;
/** Half of the last printed digit. */
const printed = (half: number) => () => half;

export const CHECKS: readonly Check[] = [
  {
    method: 'battery.freezing',
    file: 'battery',
    list: 'acidFreezing',
    unit: '°C',
    what: (c) => `acid of ${said(c, 'massPct')} % by mass freezes at`,
    published: (c) => n(c, 'freezingC'),
    ours: (c) => acidFreezingPoint(n(c, 'massPct') / 100).temperatureC,
    tolerance: printed(0.13),
    reason: 'the largest residual of the fit is 0.12 K',
  },
  {
    method: 'battery.freezing',
    file: 'battery',
    list: 'gravityFreezing',
    unit: '°C',
    what: (c) => `acid of specific gravity ${said(c, 'specificGravity')} freezes at (${String(c.table)})`,
    published: (c) => n(c, 'freezingC'),
    ours: (c) => freezingPointOfGravity(n(c, 'specificGravity'), HYDROMETER_60F_C).temperatureC,
    tolerance: (c) => (c.table !== 'OD1002' ? 2.1 : n(c, 'specificGravity') > 1.22 ? 1.5 : 0.6),
    reason: 'whole °F or steps of 5 °F; gravities of 80 °F beside freezing points of 60 °F; above 1.22 a continuation',
    leaveOut: (c) => freezingPointOfGravity(n(c, 'specificGravity'), HYDROMETER_60F_C).atOrBelow,
  },
  {
    method: 'battery.voltage',
    file: 'battery',
    list: 'voltageByTemperature',
    unit: 'V',
    what: (c) => `${chemistry(c)} at ${said(c, 'stateOfChargePct')} % and ${said(c, 'temperatureC')} °C rests at`,
    published: (c) => n(c, 'volts'),
    ours: (c) => openCircuitVoltage(chemistry(c), n(c, 'stateOfChargePct'), n(c, 'temperatureC')),
    tolerance: printed(0.002),
    reason: 'the table that is used, read back',
  },
  {
    method: 'battery.voltage',
    file: 'battery',
    list: 'voltageNoLoad',
    unit: 'V',
    what: (c) => `flooded battery without load at ${said(c, 'stateOfChargePct')} %`,
    published: (c) => n(c, 'volts'),
    ours: (c) => openCircuitVoltage('flooded-antimony', n(c, 'stateOfChargePct'), 26.7),
    tolerance: printed(0.1),
    reason: 'another manual, printed in steps of 0.2 V',
    leaveOut: (c) => n(c, 'stateOfChargePct') === 0,
  },
  {
    method: 'battery.charge',
    file: 'battery',
    list: 'chargeAmount',
    unit: 'Ah',
    what: (c) => `${said(c, 'capacityAh')} Ah from ${said(c, 'stateOfChargePct')} % takes`,
    published: (c) => n(c, 'ampHours'),
    ours: (c) => chargeAh(batteryOf(c), n(c, 'stateOfChargePct')),
    tolerance: printed(0.0001),
    reason: 'arithmetic, printed to four digits',
  },
  {
    method: 'store.wetness',
    file: 'psychrometrics',
    list: 'saturation',
    unit: 'Pa',
    what: (c) => `saturation over water at ${said(c, 'temperatureC')} °C`,
    published: (c) => n(c, 'overWaterPa'),
    ours: (c) => saturationOverWaterPa(n(c, 'temperatureC')),
    tolerance: (c) => Math.max(0.01, n(c, 'overWaterPa') * 1e-4),
    reason: 'printed to four or five digits',
  },
  {
    method: 'store.wetness',
    file: 'psychrometrics',
    list: 'saturation',
    unit: 'Pa',
    what: (c) => `saturation over ice at ${said(c, 'temperatureC')} °C`,
    published: (c) => n(c, 'overIcePa'),
    ours: (c) => saturationOverIcePa(n(c, 'temperatureC')),
    tolerance: (c) => Math.max(0.01, n(c, 'overIcePa') * 1e-4),
    reason: 'printed to four or five digits',
    leaveOut: (c) => typeof c.overIcePa !== 'number' || n(c, 'temperatureC') > 0,
  },
  {
    method: 'store.wetness',
    file: 'psychrometrics',
    list: 'points',
    unit: '°C',
    what: (c) => `dew point of air at ${said(c, 'temperatureC')} °C and ${said(c, 'rhPct')} %`,
    published: (c) => n(c, 'dewPointC'),
    ours: (c) => dewPointC(vapourPressurePa(n(c, 'temperatureC'), n(c, 'rhPct'))),
    tolerance: printed(0.02),
    reason: 'printed to 0.01 K',
    leaveOut: (c) => typeof c.dewPointC !== 'number',
  },
  {
    method: 'corrosion.steel',
    file: 'corrosion',
    list: 'arithmetic',
    unit: 'µm',
    what: (c) =>
      `steel at ${said(c, 'temperatureC')} °C, ${said(c, 'rhPct')} %, P ${said(c, 'so2')}, S ${said(c, 'chloride')}`,
    published: (c) => n(c, 'steelUm'),
    ours: (c) => firstYearLossUm('steel', dose(c)),
    tolerance: printed(0.005),
    reason: 'worked by hand, printed to 0.001',
  },
  {
    method: 'corrosion.zinc',
    file: 'corrosion',
    list: 'arithmetic',
    unit: 'µm',
    what: (c) =>
      `zinc at ${said(c, 'temperatureC')} °C, ${said(c, 'rhPct')} %, P ${said(c, 'so2')}, S ${said(c, 'chloride')}`,
    published: (c) => n(c, 'zincUm'),
    ours: (c) => firstYearLossUm('zinc', dose(c)),
    tolerance: printed(0.0005),
    reason: 'worked by hand, printed to 0.0001',
  },
  {
    method: 'corrosion.desiccant-din',
    file: 'desiccant',
    list: 'din',
    unit: 'units',
    what: (c) => `bag of ${said(c, 'areaM2')} m² for ${said(c, 'days')} days`,
    published: (c) => n(c, 'units'),
    ours: (c) => Math.ceil(din55474Units(c as unknown as Parameters<typeof din55474Units>[0])),
    tolerance: printed(0),
    reason: 'a part of a unit needs a whole one',
  },
  {
    method: 'corrosion.desiccant-mil',
    file: 'desiccant',
    list: 'milBarrier',
    unit: 'units',
    what: (c) => `barrier of ${said(c, 'areaIn2')} square inches, ${said(c, 'woodLb')} lb of wood`,
    published: (c) => n(c, 'units'),
    ours: (c) => milStd2073BarrierUnits(n(c, 'areaIn2') * INCH2_M2, { wood: n(c, 'woodLb') * POUND_KG }),
    tolerance: (c) => n(c, 'units') * 0.011,
    reason: 'the standard rounds its factor three ways, 1.1 % apart',
  },
  {
    method: 'coolant.freezing-point',
    file: 'coolant',
    list: 'ashrae',
    unit: '°C',
    what: (c) => `${String(c.glycol)} glycol, ${said(c, 'volPct')} % by volume`,
    published: (c) => n(c, 'freezeC'),
    ours: (c) => freezingPointC(c.glycol as 'ethylene' | 'propylene', n(c, 'volPct') / 100),
    tolerance: printed(1e-6),
    reason: 'the table that is used, read back',
  },
  {
    method: 'coolant.freezing-point',
    file: 'coolant',
    list: 'lange',
    unit: '°C',
    what: (c) => `propylene glycol, ${said(c, 'volPct')} % by volume (Lange)`,
    published: (c) => n(c, 'freezeC'),
    ours: (c) => freezingPointC('propylene', n(c, 'volPct') / 100),
    tolerance: (c) => (c.disagrees === undefined ? 1.2 : 1.5),
    reason: 'whole °F of an older determination of pure glycol',
  },
  {
    method: 'coolant.replace',
    file: 'coolant',
    list: 'swaps',
    unit: 'L',
    what: (c) => `${said(c, 'volumeL')} L from ${said(c, 'now')} to ${said(c, 'target')}`,
    published: (c) => n(c, 'litres'),
    ours: (c) =>
      drainAndReplace(n(c, 'volumeL'), n(c, 'volumeL'), n(c, 'now'), n(c, 'target'), n(c, 'refill'))?.totalL ?? 0,
    tolerance: printed(0.0005),
    reason: 'worked by hand, printed to 0.001',
  },
  {
    method: 'fuel.expansion',
    file: 'fuel',
    list: 'alpha',
    unit: '1/K',
    what: (c) => `expansion of petrol of ${said(c, 'densityKgM3')} kg/m³`,
    published: (c) => n(c, 'alphaPerK'),
    ours: (c) => expansionPerK(n(c, 'densityKgM3')),
    tolerance: printed(5e-7),
    reason: 'worked by hand, printed to 0.000001',
  },
  {
    method: 'fuel.expansion',
    file: 'fuel',
    list: 'expansion',
    unit: '',
    what: (c) => `growth from ${said(c, 'fromC')} to ${said(c, 'toC')} °C`,
    published: (c) => n(c, 'growth'),
    ours: (c) => expansionRatio(n(c, 'fromC'), n(c, 'toC'), n(c, 'densityKgM3')) - 1,
    tolerance: printed(0.0005),
    reason: 'printed to 0.0001',
  },
  {
    method: 'fuel.water-tolerance',
    file: 'fuel',
    list: 'e10',
    unit: 'vol %',
    what: (c) => `E10 at ${said(c, 'temperatureC')} °C holds`,
    published: (c) => n(c, 'volPct'),
    ours: (c) => waterTolerancePct('E10', n(c, 'temperatureC')).value,
    tolerance: (c) => n(c, 'volPct') * 0.1,
    reason: 'the points themselves scatter by a tenth',
  },
  {
    method: 'fuel.water-tolerance',
    file: 'fuel',
    list: 'e0',
    unit: 'ppm',
    what: (c) => `petrol without ethanol, HC ${said(c, 'hydrogenCarbon')}, at ${said(c, 'temperatureC')} °C`,
    published: (c) => n(c, 'ppmMass'),
    ours: (c) => waterInHydrocarbonPpm(n(c, 'temperatureC'), n(c, 'hydrogenCarbon')),
    tolerance: printed(0.75),
    reason: 'printed in whole ppm',
  },
  {
    method: 'fuel.breathing-water',
    file: 'fuel',
    list: 'breathing',
    unit: 'g',
    what: (c) => `${said(c, 'headSpaceL')} L of head space, ${said(c, 'swingK')} K a day`,
    published: (c) => n(c, 'gramsPerDay'),
    ours: (c) => breathedWaterG(n(c, 'headSpaceL'), n(c, 'swingK'), n(c, 'meanC'), 12.1),
    tolerance: printed(0.0001),
    reason: 'printed to 0.0001 g; vapour at 20 °C and 70 % is 12.1 g/m³',
  },
  {
    method: 'tyres.expected',
    file: 'tyres',
    list: 'gas',
    unit: 'kPa',
    what: (c) => `${said(c, 'fromKPa')} kPa at ${said(c, 'fromC')} °C, read at ${said(c, 'toC')} °C`,
    published: (c) => n(c, 'kPa'),
    ours: (c) => pressureAt(n(c, 'fromKPa'), n(c, 'fromC'), n(c, 'toC')),
    tolerance: printed(0.06),
    reason: 'worked by hand, printed to 0.1 kPa',
  },
  {
    method: 'work.torque',
    file: 'units',
    list: 'exact',
    unit: 'N·m',
    what: (c) => String(c.text),
    published: (c) => n(c, 'si'),
    ours: (c) => parseQuantity(String(c.text), c.dimension as Parameters<typeof parseQuantity>[1]) as number,
    tolerance: (c) => Math.abs(n(c, 'si')) * 1e-9,
    reason: 'exact by definition',
    leaveOut: (c) => c.dimension !== 'torque',
  },
];

export interface CheckResult {
  method: string;
  what: string;
  unit: string;
  published: number;
  ours: number;
  tolerance: number;
  reason: string;
  source: string;
  status: string;
  met: boolean;
}

/**
 * Every published case with what the calculation gives for it now.
 * @param files - the parsed files of tests/published, by name without ending
 */
export function runChecks(files: Readonly<Record<string, unknown>>): CheckResult[] {
  return CHECKS.flatMap((check) => {
    const lists = files[check.file] as Record<string, Case[]> | undefined;
    const cases = lists?.[check.list];
    if (lists && !cases) throw new RangeError(`${check.file}.json: expected a list "${check.list}"`);
    return (cases ?? [])
      .filter((c) => !check.leaveOut?.(c))
      .map((c) => {
        const [published, ours, tolerance] = [check.published(c), check.ours(c), check.tolerance(c)];
        const met = Math.abs(ours - published) <= tolerance;
        const { method, unit, reason } = check;
        return {
          method,
          what: check.what(c),
          unit,
          published,
          ours,
          tolerance,
          reason,
          source: c.source,
          status: c.status,
          met,
        };
      });
  });
}
