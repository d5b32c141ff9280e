/**
 * What logged voltages say about a battery's own loss rate.
 *
 * The plan's expected loss is L(t); the battery's own is m·L(t). Between two charges the readings lie on a straight line in
 * L with the slope −m, whatever the state of charge it began at: weighted least squares give m and its variance. The prior
 * is log-normal about 1, as wide as the chemistry's range says; the posterior is taken at its mode. A single reading after a
 * known charge moves m by its weight against the prior; some five over a rest decide it.
 */
import { dayNumber } from '../dates.ts';
import type { Battery, IsoDate, Machine, Reading } from '../household.ts';
import type { BatteryPlan } from '../season-plan.ts';
import { round } from './charge.ts';
import { type LossCurve, type LossRate, type LossRates, lossPct } from './loss.ts';
import { openCircuitVoltage, stateOfChargeFromVoltage } from './voltage.ts';

/** TM 9-6115-730-24, WP 0050: at least 3 h at rest, better 8 h. */
const REST_H = { least: 3, better: 8 };
/** A reading between the two leaves half as much again open; common practice. */
const SHORT_REST_FACTOR = 1.5;
/** A resting 12 V battery reads inside this, unless it is no resting 12 V battery [V]. */
const POSSIBLE_V = { low: 6, high: 15 };
/** Above full by more than this, charge still sits on the plates or the charger is on [V]. */
const SURFACE_V = 0.15;
/** One cell of six. A dead one is missed to within a third of a volt [V]. */
const CELL_V = { value: 2.1, within: 0.35 };
/** What is open about a state of charge after a charge that was logged [%]. */
const AFTER_CHARGE_PCT = 2;
/** A rate that was given is still an estimate of a battery that ages. */
const SMALLEST_PRIOR_SIGMA = 0.4;
/** No multiplier is looked for beyond e to this power. */
const LARGEST_LOG = 5;
/** Days after a full charge in which a low reading speaks of the plates and not of time [d]. */
const SOON_DAYS = 7;

export type JudgedReading = BatteryPlan['readings'][number] & { index: number };

export interface Calibration {
  /** Absent where no reading says anything of the loss rate. */
  result?: BatteryPlan['calibration'];
  readings: JudgedReading[];
  /** How much of the prior's width is left, 0–1. */
  widthLeft: number;
}

interface Point {
  index: number;
  lossPct: number;
  statePct: number;
  sigmaPct: number;
  reading: boolean;
}

/** What the log of a rest holds. */
export interface BatteryLog {
  readings: readonly Reading[];
  charged: readonly { date: IsoDate; toPct: number }[];
  asOf: IsoDate;
}

/**
 * Judges the readings of a rest and estimates the loss-rate multiplier from them.
 * @param battery - battery
 * @param log - readings and charges, and the day the log is read
 * @param curve - warmth over the rest
 * @param rates - loss rates before calibration
 * @param connected - leads on
 * Source: TM 9-6115-730-24 WP 0050 (rest before a reading); least squares with a log-normal prior.
 * Error: stated with the result, as one-sigma factor; a voltage table 0.05 V off leaves the slope nearly as it is.
 */
export function calibrate(
  battery: Battery,
  log: BatteryLog,
  curve: LossCurve,
  rates: LossRates,
  connected: boolean,
): Calibration {
  const { rest } = curve;
  const indexOf = (date: IsoDate) => dayNumber(date) - rest.firstDay;
  const charges = log.charged
    .map((c) => ({ ...c, index: indexOf(c.date) }))
    .filter((c) => c.index >= 0 && c.index <= rest.days && c.date <= log.asOf)
    .sort((a, b) => a.index - b.index);
  const readings = [...log.readings]
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    .map((r) => judge(battery, r, indexOf(r.date), rest.days, log.asOf));

  const problems = readings.filter((r) => !r.usable && r.inRest).map((r) => `${r.date}: ${r.why}`);
  const expectedFrom0 = (index: number) => lossPct(curve, rates.expected, 0, index);
  const startSigma = Math.max(AFTER_CHARGE_PCT, (battery.startPct.high - battery.startPct.low) / 4);
  const segments: Point[][] = [
    [{ index: 0, lossPct: 0, statePct: battery.startPct.value, sigmaPct: startSigma, reading: false }],
  ];
  const steps = [
    ...readings.filter((r) => r.usable).map((r) => ({ index: r.index, reading: r, charge: undefined })),
    ...charges.map((c) => ({ index: c.index, reading: undefined, charge: c })),
  ].sort((a, b) => a.index - b.index || (a.reading ? -1 : 1));

  for (const { index, reading, charge } of steps) {
    if (charge) {
      const point = { index, lossPct: expectedFrom0(index), statePct: charge.toPct, sigmaPct: AFTER_CHARGE_PCT };
      segments.push([{ ...point, reading: false }]);
      continue;
    }
    const segment = segments[segments.length - 1]!;
    const before = segment[segment.length - 1]!;
    const point: Point = {
      index,
      lossPct: expectedFrom0(index),
      statePct: reading!.stateOfChargePct,
      sigmaPct: reading!.spreadPct,
      reading: true,
    };
    const rise = point.statePct - before.statePct;
    if (before.reading && rise > Math.max(before.sigmaPct, point.sigmaPct)) {
      problems.push(
        `${reading!.date}: ${round(reading!.volts, 2)} V is ${round(rise, 0)} % more than the reading before, and no charge stands between them in the log: either a charge was not written down, or one of the two is wrong.`,
      );
      segments.push([point]);
    } else segment.push(point);
  }

  const { multiplier, sigma, priorSigma, used } = estimate(segments, curve, rates);
  const judged = readings.map(({ inRest: _, cellShort: __, ...r }) => r);
  if (used === 0 && problems.length === 0) return { readings: judged, widthLeft: 1 };
  const factor = Math.exp(sigma);
  return {
    result: {
      multiplier,
      factor,
      readings: used,
      suggests: suggestion(battery, readings, charges, { curve, rates, multiplier, factor, connected, used }),
      problems,
    },
    readings: judged,
    widthLeft: sigma / priorSigma,
  };
}

function judge(battery: Battery, reading: Reading, index: number, days: number, asOf: IsoDate) {
  const { date, volts, temperatureC, restedH } = reading;
  const inRest = index >= 0 && index <= days;
  const base = { date, volts, temperatureC, index, inRest, cellShort: false };
  const no = (why: string) => ({ ...base, stateOfChargePct: 0, spreadPct: 100, usable: false, why });
  if (!(volts >= POSSIBLE_V.low && volts <= POSSIBLE_V.high))
    return no(`${round(volts, 2)} V is not the voltage of a resting 12 V battery (6 to 15 V); read it again.`);
  if (!(temperatureC >= -60 && temperatureC <= 60))
    return no(`${round(temperatureC)} °C is no temperature a battery is read at; write the battery's own temperature.`);
  const found = stateOfChargeFromVoltage(battery.chemistry, volts, temperatureC);
  const shortRest = restedH < REST_H.better;
  const spreadPct = Math.min(100, found.spreadPct * (shortRest ? SHORT_REST_FACTOR : 1));
  const seen = { ...base, stateOfChargePct: found.stateOfChargePct, spreadPct };
  const off = (why: string) => ({ ...seen, usable: false, why });
  if (!inRest) return off('taken outside this rest.');
  if (date > asOf) return off(`the date lies after ${asOf}.`);
  if (!(restedH >= REST_H.least))
    return off(
      `rested ${round(restedH)} h; at least ${REST_H.least} h are needed, better ${REST_H.better} h, before the voltage tells the charge.`,
    );
  if (found.beyondV > SURFACE_V)
    return off(
      `${round(volts, 2)} V is ${round(found.beyondV, 2)} V above full: charge still sits on the plates, or a charger is on; rest it ${REST_H.better} h and read again.`,
    );
  if (isCellShort(battery, volts, temperatureC))
    return {
      ...off(
        `${round(volts, 2)} V is about one cell (2.1 V) short of a charged battery; it says nothing of the loss rate.`,
      ),
      cellShort: true,
    };
  if (found.beyondV < 0)
    return { ...seen, usable: true, why: 'below the empty end of the table: at most that much is left.' };
  return { ...seen, usable: true, why: shortRest ? `rested under ${REST_H.better} h: less sure.` : undefined };
}

/** A lead–acid battery that reads one cell less than full. */
function isCellShort(battery: Battery, volts: number, temperatureC: number): boolean {
  if (battery.chemistry === 'lifepo4') return false;
  return Math.abs(openCircuitVoltage(battery.chemistry, 100, temperatureC) - CELL_V.value - volts) <= CELL_V.within;
}

function estimate(segments: readonly Point[][], curve: LossCurve, rates: LossRates) {
  let [information, slope, used] = [0, 0, 0];
  for (const segment of segments) {
    if (segment.length < 2) continue;
    let [weight, meanLoss, meanState] = [0, 0, 0];
    for (const p of segment) weight += p.sigmaPct ** -2;
    for (const p of segment) {
      meanLoss += (p.lossPct * p.sigmaPct ** -2) / weight;
      meanState += (p.statePct * p.sigmaPct ** -2) / weight;
    }
    for (const p of segment) {
      information += (p.lossPct - meanLoss) ** 2 * p.sigmaPct ** -2;
      slope += (p.lossPct - meanLoss) * (meanState - p.statePct) * p.sigmaPct ** -2;
      if (p.reading) used++;
    }
  }
  const priorSigma = priorWidth(curve, rates);
  if (information === 0) return { multiplier: 1, sigma: priorSigma, priorSigma, used: 0 };
  const best = slope / information;
  const prior = priorSigma ** -2;
  // Mode of exp(−information·(m − best)²/2 − prior·(ln m)²/2): a scan, since a battery far out of its range makes two.
  const misfit = (u: number) => information * (Math.exp(u) - best) ** 2 + prior * u * u;
  let u = 0;
  for (let trial = -LARGEST_LOG; trial <= LARGEST_LOG; trial += 0.1) if (misfit(trial) < misfit(u)) u = trial;
  for (let step = 0.05; step > 1e-9; step /= 2)
    for (const trial of [u - step, u + step]) if (misfit(trial) < misfit(u)) u = trial;
  return { multiplier: Math.exp(u), sigma: (information * Math.exp(2 * u) + prior) ** -0.5, priorSigma, used };
}

/** The range of the plan's own rates read as one sigma to each side: batteries outside it are not rare, faulty ones least. */
function priorWidth(curve: LossCurve, rates: LossRates): number {
  const total = (rate: LossRate) => lossPct(curve, rate, 0, curve.rest.days);
  const [low, high] = [total(rates.low), total(rates.high)];
  const width = low > 0 && high > low ? Math.log(high / low) / 2 : 0;
  return Math.max(SMALLEST_PRIOR_SIGMA, width);
}

interface Found {
  curve: LossCurve;
  rates: LossRates;
  multiplier: number;
  factor: number;
  connected: boolean;
  used: number;
}

function suggestion(
  battery: Battery,
  readings: readonly (JudgedReading & { cellShort: boolean })[],
  charges: readonly { index: number; toPct: number }[],
  found: Found,
): string | undefined {
  const usable = readings.filter((r) => r.usable);
  const lead = battery.chemistry !== 'lifepo4';
  const short = readings.find((r) => r.cellShort);
  if (short)
    return `${short.date}: ${round(short.volts, 2)} V is about one cell (2.1 V) short of a charged battery: a cell may be dead, or the battery is quite empty. Charge it, rest it ${REST_H.better} h and read again; if it comes back to the same, replace it.`;
  if (lead) {
    for (const reading of usable) {
      const full = charges.find(
        (c) => c.toPct >= 95 && reading.index > c.index && reading.index - c.index <= SOON_DAYS,
      );
      if (full && reading.stateOfChargePct + reading.spreadPct < 85)
        return `It read ${round(reading.stateOfChargePct, 0)} % within ${SOON_DAYS} days of a full charge: the plates no longer take the charge (sulphated), or the charge was not finished. Charge it to the end, rest it ${REST_H.better} h and read again.`;
    }
  }
  const { curve, rates, multiplier, factor, connected, used } = found;
  if (used === 0) return undefined;
  const total = (rate: LossRate) => lossPct(curve, rate, 0, curve.rest.days);
  const most = total(rates.high) / total(rates.expected);
  if (!(multiplier / factor > most)) return undefined;
  const perDay = (multiplier * total(rates.expected)) / curve.rest.days;
  const own = (rates.expected.selfPctPerH * curve.equivalentH[curve.rest.days]!) / curve.rest.days;
  const drainMA = ((perDay - own) / 100) * battery.capacityAh * battery.health.value * (1000 / 24);
  const rate = `It loses ${round(perDay * 30)} % a month, more than its kind does by itself (${round((total(rates.high) / curve.rest.days) * 30)} % at most)`;
  return connected
    ? `${rate}: with the leads on that is a key-off drain of about ${round(drainMA, 0)} mA. Measure it in series at the negative lead; if it is small, a cell is failing.`
    : `${rate}, though nothing is connected: a cell is failing, or a lead was left on (a drain of about ${round(drainMA, 0)} mA would do it). Load-test it before first use.`;
}

/**
 * The loss rates after calibration: the expected ones times the multiplier, and of the range's width what the readings left.
 * @param rates - before
 * @param calibration - from `calibrate`
 */
export function calibratedRates(rates: LossRates, calibration: Calibration): LossRates {
  const m = calibration.result?.multiplier ?? 1;
  const s = Math.min(1, calibration.widthLeft);
  const mix = (edge: LossRate): LossRate => ({
    selfPctPerH: m * (rates.expected.selfPctPerH + s * (edge.selfPctPerH - rates.expected.selfPctPerH)),
    drainPctPerH: m * (rates.expected.drainPctPerH + s * (edge.drainPctPerH - rates.expected.drainPctPerH)),
  });
  return { low: mix(rates.low), expected: mix(rates.expected), high: mix(rates.high) };
}

/** True where somebody has kept a record in this rest: what it does not hold was not done. */
export function recordKept(machine: Machine, asOf: IsoDate): boolean {
  const { lastUse, firstUse } = machine.season;
  const inRest = (date: IsoDate) => date > lastUse && date <= firstUse && date <= asOf;
  return (
    machine.charged.some((c) => inRest(c.date)) ||
    machine.readings.some((r) => inRest(r.date)) ||
    machine.doneSteps.some((s) => inRest(s.date))
  );
}
