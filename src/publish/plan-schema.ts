/**
 * The published form of the plan: `plan.schema.json` is made from this schema, and the build checks what it writes by it.
 *
 * It says the same as the types of `src/planner/season-plan.ts`; the two assignments at the end fail to compile when they part.
 */
import { z } from 'zod';
import type { MachinePlan, SeasonPlan } from '../planner/season-plan.ts';

const date = z.iso.date().meta({ description: "Calendar date of the household's zone, YYYY-MM-DD" });
const finite = z.number();
const text = z.string();
const month = z.int().min(1).max(12);
const count = z.int().min(0);
const valueOrText = z.union([finite, text]);

const derivation = z
  .strictObject({
    method: text.meta({ description: 'Key of the calculation in the registry of methods' }),
    equation: text,
    inputs: z.array(z.strictObject({ name: text, value: valueOrText, unit: text })),
    result: z.strictObject({ value: valueOrText, unit: text }),
    sources: z.array(text),
    caveat: text.optional(),
  })
  .meta({ id: 'Derivation', description: 'How a number came about' });

const warning = z
  .strictObject({
    machine: text.optional(),
    level: z.enum(['danger', 'warning', 'note']),
    text,
    act: text,
    about: text,
  })
  .meta({ id: 'Warning' });

const station = z.strictObject({ name: text, distanceKm: finite, heightDifferenceM: finite, far: z.boolean() });

const place = z
  .strictObject({
    id: text,
    name: text,
    enclosure: text,
    power: z.boolean(),
    station: station.optional(),
    outdoorC: z.array(finite).length(12),
    outdoorTenDayC: z.array(finite).length(37),
    climateSource: text,
    attribution: text,
  })
  .meta({ id: 'Place' });

const batteryDay = z
  .strictObject({
    date,
    temperatureC: finite.meta({ description: "Day's mean temperature of the battery, °C" }),
    stateOfChargePct: finite.min(0).max(100),
    openCircuitV: finite,
    freezingPointC: finite,
  })
  .meta({ id: 'BatteryDay' });

const beforeCharge = z
  .strictObject({ kind: z.enum(['frozen', 'run-down', 'low']), text })
  .meta({ description: 'What has to be settled before it is charged' });

const charge = z
  .strictObject({
    occurrence: z.int().min(1).optional(),
    date: date.meta({ description: "The reminder's day, on or before the high-loss date" }),
    earliest: date.meta({ description: 'Day the high-loss path reaches the threshold' }),
    overdue: z.boolean().optional().meta({ description: 'True where the day by which it was due is past' }),
    expected: date.optional().meta({ description: 'Day the expected path reaches the threshold' }),
    ampHours: finite.min(0),
    ampHoursMost: finite.min(0),
    hours: finite.min(0),
    hoursMost: finite.min(0),
    chargerId: text.optional(),
    tripId: text.optional(),
    why: text,
    before: beforeCharge.optional(),
    noCharger: text.optional(),
  })
  .meta({ id: 'Charge' });

const battery = z
  .strictObject({
    chemistry: z.enum(['flooded-antimony', 'flooded-calcium', 'agm', 'gel', 'lifepo4']),
    capacityAh: finite.positive(),
    care: z.enum(['maintainer', 'carry-in', 'visits']),
    careReason: text,
    keptAt: z.enum(['machine', 'room']),
    connected: z.boolean(),
    leadStillOn: z
      .literal(true)
      .optional()
      .meta({ description: 'Its lead is to come off, and is reckoned on until that is ticked' }),
    outOfReach: z
      .literal(true)
      .optional()
      .meta({ description: 'It does not come out, at a place without electricity: no charge is planned' }),
    notKeptSince: date
      .optional()
      .meta({ description: 'On a maintainer that does not keep it full, by the readings from this day on' }),
    thresholdPct: finite.min(0).max(100),
    paths: z
      .strictObject({ low: z.array(batteryDay), expected: z.array(batteryDay), high: z.array(batteryDay) })
      .optional()
      .meta({ description: "By day; only in the machine's own plan.json" }),
    charges: z.array(charge),
    chargeWithoutDay: date.optional().meta({ description: 'A charge is due by this day, and no day was found for it' }),
    chargeAtStartUp: z
      .strictObject({ due: date, overdue: z.boolean().optional() })
      .optional()
      .meta({ description: "A charge that is the start-up's own, and the day by which it is due" }),
    before: beforeCharge.optional(),
    freezingMargin: z.strictObject({ minK: finite, month }),
    freezingByMonth: z.array(
      z.strictObject({ month, designLowC: finite, typicalLowC: finite, freezingPointC: finite, marginK: finite }),
    ),
    calibration: z
      .strictObject({
        multiplier: finite.positive(),
        factor: finite.min(1),
        readings: count,
        suggests: text.optional(),
        problems: z.array(text),
      })
      .optional(),
    readings: z.array(
      z.strictObject({
        date,
        volts: finite,
        temperatureC: finite,
        stateOfChargePct: finite,
        spreadPct: finite,
        usable: z.boolean(),
        why: text.optional(),
      }),
    ),
    firstMonthLossPct: z.strictObject({ low: finite, expected: finite, high: finite }),
    derivations: z.array(derivation),
  })
  .meta({ id: 'Battery' });

const percent = finite.min(0).max(100);
const driveBattery = z
  .strictObject({
    chemistry: z.enum(['lithium-ion', 'lead-acid']),
    removable: z.boolean(),
    keepPct: z.strictObject({ low: percent, high: percent }).meta({ description: 'State of charge it is left at' }),
    chargeToPct: percent,
    rechargeBelowPct: percent,
    lossPctPerMonth: z.strictObject({ low: percent, expected: percent, high: percent }),
    rechargeBy: date.optional().meta({ description: 'From the low end of keepPct, at the fastest loss' }),
    rechargeExpected: date.optional().meta({ description: 'From chargeToPct, at the expected loss' }),
    lowestStorageC: finite,
    storeLowC: finite.meta({ description: 'Coldest of the store over the rest, °C' }),
    derivations: z.array(derivation),
  })
  .meta({ id: 'DriveBattery' });

const hours = finite.min(0).max(744);
const air = z.strictObject({
  months: z.array(
    z.strictObject({
      month,
      meanC: finite,
      dewPointC: finite,
      meanRhPct: finite,
      condensationHours: hours.nullable(),
      condensationHoursP90: hours.nullable(),
      frostHours: hours.nullable(),
      frostHoursP90: hours.nullable(),
      wetHours: hours,
      wetHoursP90: hours,
    }),
  ),
  condensationSayable: z.boolean(),
  frostSayable: z.boolean(),
  typicalFactor: z.strictObject({ condensation: finite.min(1), frost: finite.min(1), wet: finite.min(1) }),
  why: text.optional(),
  lowestC: finite,
  highestC: finite,
  reckonedLowC: finite,
});

const corrosion = z.strictObject({
  category: z.enum(['C1', 'C2', 'C3', 'C4', 'C5', 'CX']),
  steelUmPerYear: finite.min(0),
  zincUmPerYear: finite.min(0),
  uncertainty: z.strictObject({ low: finite, high: finite }),
  caveats: z.array(text),
  protection: z.strictObject({ level: z.int(), name: text, measures: z.array(text), reason: text }),
  desiccant: z
    .strictObject({
      areaM2: finite,
      volumeM3: finite,
      din55474Units: finite,
      milStd2073Units: finite,
      note: text,
    })
    .optional(),
  dehumidifierRhPct: z.strictObject({ low: finite, high: finite }).optional(),
  derivations: z.array(derivation),
});

const fuel = z.strictObject({
  choice: z.enum(['fill', 'drain', 'leave']),
  reason: text,
  settled: z.enum(['done', 'past']).optional(),
  levelL: finite.min(0),
  addL: finite.min(0).optional(),
  drawOffL: finite.min(0).optional(),
  doseML: finite.min(0).optional(),
  runMinutes: finite.min(0).optional(),
  drainedL: finite.min(0).optional(),
  cans: count.optional(),
  waterToleranceML: finite.min(0),
  breathingWaterML: finite.min(0),
  fullAtHottestPct: finite,
  useBy: z.strictObject({ earliest: date, latest: date }),
  drainedUseBy: date.optional(),
  drainedOld: z.literal(true).optional(),
  atFirstUse: z.strictObject({ verdict: z.enum(['use', 'mix', 'dispose']), text }),
  tap: text,
  localLimit: z.strictObject({ where: text, text, exceeded: z.boolean().nullable() }),
  derivations: z.array(derivation),
});

const coolant = z.strictObject({
  freezeC: finite.optional(),
  needC: finite,
  aimC: finite,
  strength: finite.min(0).max(1).optional(),
  targetStrength: finite.min(0).max(1),
  replaceL: finite.min(0).optional(),
  swaps: count.optional(),
  enough: z.boolean().nullable(),
  testBy: date.optional(),
  changeBy: date.optional(),
  unwritten: z.enum(['tested', 'strengthened']).optional(),
  ageDue: date.optional(),
  text,
  derivations: z.array(derivation),
});

const tyre = z.strictObject({
  position: text,
  count,
  normalKPa: finite.min(0),
  setKPa: finite.min(0),
  expectedAtStartUpKPa: finite,
  lookIn: z.array(z.strictObject({ temperatureC: finite, expectedKPa: finite })),
  standsOnTyres: z.boolean(),
  moveEveryMonths: finite.optional(),
  derivations: z.array(derivation),
});

const service = z.strictObject({
  id: text,
  what: text,
  due: date.optional(),
  dueKm: finite.optional(),
  dueHours: finite.optional(),
  by: z.enum(['calendar', 'distance', 'hours', 'observed', 'unknown']),
  pulledIn: z.boolean(),
  text,
});

const torque = z
  .strictObject({
    what: text,
    count,
    head: text,
    torqueNm: finite.positive().optional(),
    torqueLbfFt: finite.positive().optional(),
    condition: z.enum(['dry', 'lubricated', 'unstated']),
    note: text.optional(),
  })
  .meta({ id: 'Torque' });

const step = z
  .strictObject({
    id: text,
    phase: z.enum(['lay-up', 'look-in', 'start-up', 'swap', 'winter']),
    part: text,
    title: text,
    detail: text.optional(),
    minutes: finite.min(0),
    tools: z.array(text),
    supplies: z.array(z.strictObject({ what: text, amount: finite, unit: text, about: z.boolean().optional() })),
    cautions: z.array(text),
    why: text,
    sources: z.array(text),
    amounts: z.array(z.strictObject({ name: text, value: finite, unit: text, assumed: z.boolean().optional() })),
    opens: z.array(text),
    closes: z.array(text),
    after: z.array(text),
    stage: z
      .enum([
        'refit',
        'fluids',
        'fuel',
        'battery',
        'plugs-out',
        'tyres',
        'controls',
        'leaks',
        'first-start',
        'first-ride',
        'paperwork',
      ])
      .optional(),
    safetyCritical: z.boolean(),
    doNotRide: text.optional(),
    needs: z.strictObject({
      dryDay: z.boolean(),
      warmEngine: z.boolean(),
      stand: z.boolean(),
      charger: z.boolean(),
      bench: z.boolean(),
      power: z.boolean(),
    }),
    earliest: date.optional(),
    latest: date.optional(),
    waitH: finite.min(0),
    goesOnFrom: text.optional(),
    reading: text.optional(),
    torques: z.array(torque),
    done: z.boolean(),
    date: date.optional(),
    overdue: date.optional(),
    useUntil: date.optional(),
  })
  .meta({ id: 'Step' });

const stripStep = z.strictObject({
  assembly: text,
  name: text,
  minutes: finite.min(0),
  forJobs: z.array(text),
  cautions: z.array(text),
  behind: z.array(text),
});

const strip = z.strictObject({
  jobs: z.array(z.strictObject({ id: text, name: text, assemblies: z.array(text), minutes: finite.min(0) })),
  off: z.array(stripStep),
  on: z.array(stripStep),
  minutesBundled: finite.min(0),
  minutesSeparate: finite.min(0),
  parts: z.array(
    z.strictObject({ what: text, amount: finite, unit: text, why: text, leadDays: finite, inStock: z.boolean() }),
  ),
  tools: z.array(text),
  nowOff: z.array(z.strictObject({ assembly: text, name: text, where: text.optional(), since: date.optional() })),
  torques: z.array(torque),
});

const assumption = z.strictObject({
  field: text,
  value: valueOrText,
  low: valueOrText,
  high: valueOrText,
  unit: text,
  reason: text,
  settle: text,
  firstChargeShiftDays: finite,
  firstChargeAt: z.strictObject({ low: date.nullable(), high: date.nullable() }),
  marginShiftK: z.strictObject({ low: finite, high: finite }),
  visitsShift: z.strictObject({ low: finite, high: finite }),
});

const whatIf = z.strictObject({
  days: z.int(),
  lastUse: date,
  text: z.array(text),
  missed: z.array(text),
  firstChargeDate: date.optional(),
  misfitHours: finite.min(0),
  coldestNightC: finite,
});

const machine = z
  .strictObject({
    id: text,
    name: text,
    kind: z.enum(['motorcycle', 'scooter', 'snow-machine', 'quad', 'side-by-side', 'car', 'tractor', 'mower']),
    use: z.enum(['road', 'snow', 'trail', 'work']),
    place: text,
    placeName: text,
    spot: text.optional(),
    season: z.strictObject({ lastUse: date, firstUse: date, proposed: z.boolean(), reasons: z.array(text) }),
    layUp: z.strictObject({ start: date, done: date, complete: z.boolean(), late: z.literal(true).optional() }),
    startUp: z.strictObject({ start: date, ready: date, firstUse: date, made: date.optional() }),
    firstFrostInStore: date.optional(),
    battery: battery.optional(),
    driveBattery: driveBattery.optional(),
    air,
    corrosion,
    fuel: fuel.optional(),
    coolant: coolant.optional(),
    tyres: z.array(tyre),
    services: z.array(service),
    steps: z.array(step),
    strip: strip.optional(),
    assumptions: z.array(assumption),
    whatIf: z.array(whatIf),
    warnings: z.array(warning),
    paperwork: z.array(z.strictObject({ id: text, what: text, date, kind: text, pausedOverRest: z.boolean() })),
    notes: z.array(z.strictObject({ date, text, assemblyId: text.optional() })),
  })
  .meta({ id: 'Machine' });

const stepOf = z.strictObject({ machine: text, step: text });

/** The whole plan, as `plan.json` has it. */
export const seasonPlanSchema = z
  .strictObject({
    format: z.literal(1),
    asOf: date,
    units: z.enum(['metric', 'us', 'imperial']),
    household: z.strictObject({
      id: text,
      name: text,
      zone: text,
      locale: text,
      clock: z.enum(['24h', '12h']),
      country: text.optional(),
      revised: text,
      siteUrl: text,
    }),
    places: z.array(place),
    machines: z.array(machine),
    ledger: z.array(
      z.strictObject({
        machine: text,
        item: text,
        state: text,
        openedBy: text,
        closedBy: text,
        safetyCritical: z.boolean(),
        where: text.optional(),
        since: date.optional(),
      }),
    ),
    sessions: z.array(
      z.strictObject({ id: text, date, start: text, hours: finite.min(0), steps: z.array(stepOf), title: text }),
    ),
    misfits: z.array(z.strictObject({ steps: z.array(stepOf), hoursMissing: finite.min(0), before: date, text })),
    trips: z.array(
      z.strictObject({
        id: text,
        date,
        machines: z.array(text),
        charges: z.array(
          z.strictObject({
            machine: text,
            chargeIndex: count,
            chargerId: text.optional(),
            chargerName: text.optional(),
            startHour: finite.optional(),
            hours: finite.min(0),
          }),
        ),
        problem: text.optional(),
      }),
    ),
    supplies: z.array(
      z.strictObject({
        what: text,
        amount: finite.min(0),
        unit: text,
        about: z.boolean().optional(),
        orderBy: date.optional(),
        needBy: date,
        inStock: z.boolean(),
        for: z.array(
          z.strictObject({ machine: text, step: text.optional(), job: text.optional(), amount: finite.min(0) }),
        ),
      }),
    ),
    events: z.array(
      z.strictObject({
        uid: z.uuid(),
        date,
        endDate: date.optional(),
        title: text,
        label: text.optional(),
        text,
        category: z.enum(['charge', 'look-in', 'lay-up', 'winter', 'order', 'start-up', 'paperwork']),
        machine: text.optional(),
        machines: z.array(text),
        path: text,
      }),
    ),
    warnings: z.array(warning),
  })
  .meta({ title: 'Idle Season plan', description: 'Everything the pages, the sheets and the calendar files say.' });

/** One machine's part, as `machines/<id>/plan.json` has it. */
export const machinePlanSchema = machine;

/** JSON Schema (draft 2020-12) of `plan.json`. */
export function planJsonSchema(): unknown {
  return z.toJSONSchema(seasonPlanSchema, { target: 'draft-2020-12' });
}

type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;
const samePlan: Same<z.infer<typeof seasonPlanSchema>, SeasonPlan> = true;
const sameMachine: Same<z.infer<typeof machinePlanSchema>, MachinePlan> = true;
void samePlan;
void sameMachine;
