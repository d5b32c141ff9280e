/**
 * What logged voltages say about a battery's own loss rate.
 *
 * The plan's expected loss is L(t); the battery's own is m·L(t). Between two charges the readings lie on a straight line in
 * L with the slope −m, whatever the state of charge it began at: weighted least squares give m and its variance. The prior
 * is log-normal about 1, as wide as the chemistry's range says; the posterior is taken at its mode. A single reading after a
 * known charge moves m by its weight against the prior; some five over a rest decide it.
 */

import { dayNumber } from '../dates.ts';
import { exp, log } from '../elementary.ts';
import type { Battery, IsoDate, Reading } from '../household.ts';
import type { BatteryPlan } from '../season-plan.ts';
import { writtenDate } from '../written.ts';
import { round } from './charge.ts';
import { type LossCurve, type LossRate, type LossRates, lossPct } from './loss.ts';
import { type JudgedReading, judgeReadings } from './readings.ts';
import { suggestion } from './suggest.ts';

/** What is open about a state of charge after a charge that was logged [%]. */
const AFTER_CHARGE_PCT = 2;
/** A rate that was given is still an estimate of a battery that ages. */
const SMALLEST_PRIOR_SIGMA = 0.4;
/** No multiplier is looked for beyond e to this power. */
const LARGEST_LOG = 5;
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
  /** Language of the dates in what is said of them. */
  locale: string;
  /** Day of the rest from which on the battery was left to itself: what lies before says nothing of its loss. */
  from?: number | undefined;
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
  const written = (date: IsoDate) => writtenDate(date, log.locale);
  const indexOf = (date: IsoDate) => dayNumber(date) - rest.firstDay;
  const isCounted = ({ index }: { index: number }) => index >= (log.from ?? Number.NEGATIVE_INFINITY);
  // One that no usable reading follows, as after today or after the rest, changes nothing.
  const charges = log.charged
    .map((c) => ({ ...c, index: indexOf(c.date) }))
    .filter((c) => c.index >= 0 && isCounted(c))
    .sort((a, b) => a.index - b.index);
  const readings = judgeReadings(battery, log, rest).filter(isCounted);

  const problems = readings.filter((r) => !r.usable && r.inRest).map((r) => `${written(r.date)}: ${r.why}`);
  const expectedFrom0 = (index: number) => lossPct(curve, rates.expected, 0, index);
  const startSigma = Math.max(AFTER_CHARGE_PCT, (battery.startPct.high - battery.startPct.low) / 4);
  const start = { index: 0, lossPct: 0, statePct: battery.startPct.value, sigmaPct: startSigma, reading: false };
  const segments: Point[][] = [log.from === undefined ? [start] : []];
  // What is read on the day of a charge was read before it: of one day, the readings stay in front.
  const steps = [
    ...readings.filter((r) => r.usable).map((r) => ({ index: r.index, reading: r, charge: undefined })),
    ...charges.map((c) => ({ index: c.index, reading: undefined, charge: c })),
  ].sort((a, b) => a.index - b.index);

  for (const { index, reading, charge } of steps) {
    if (charge) {
      const point = { index, lossPct: expectedFrom0(index), statePct: charge.toPct, sigmaPct: AFTER_CHARGE_PCT };
      segments.push([{ ...point, reading: false }]);
      continue;
    }
    const segment = segments[segments.length - 1]!;
    const before = segment.at(-1);
    const point: Point = {
      index,
      lossPct: expectedFrom0(index),
      statePct: reading!.stateOfChargePct,
      sigmaPct: reading!.spreadPct,
      reading: true,
    };
    const rise = before?.reading ? point.statePct - before.statePct : 0;
    if (before && rise > Math.max(before.sigmaPct, point.sigmaPct)) {
      problems.push(
        `${written(reading!.date)}: ${round(reading!.volts, 2, log.locale)} V is ${round(rise, 0, log.locale)} % more than the reading before, and no charge stands between them in the log: either a charge was not written down, or one of the two is wrong.`,
      );
      segments.push([point]);
    } else segment.push(point);
  }

  const { multiplier, sigma, priorSigma, used, observed } = estimate(segments, curve, rates);
  if (used === 0 && problems.length === 0) return { readings, widthLeft: 1 };
  const factor = exp(sigma);
  return {
    result: {
      multiplier,
      factor,
      readings: used,
      suggests: suggestion(battery, readings, charges, {
        rates,
        multiplier,
        factor,
        connected,
        used,
        observed,
        locale: log.locale,
        written,
      }),
      problems,
    },
    readings,
    widthLeft: sigma / priorSigma,
  };
}

/** A point counts by the inverse of its variance. */
const weightOf = (sigma: number) => 1 / (sigma * sigma);

function estimate(segments: readonly Point[][], curve: LossCurve, rates: LossRates) {
  let [information, slope, used] = [0, 0, 0];
  const observed = { days: 0, equivalentH: 0 };
  for (const segment of segments) {
    if (segment.length < 2) continue;
    const [first, last] = [segment[0]!.index, segment[segment.length - 1]!.index];
    observed.days += last - first;
    observed.equivalentH += curve.equivalentH[last]! - curve.equivalentH[first]!;
    let [weight, meanLoss, meanState] = [0, 0, 0];
    for (const p of segment) weight += weightOf(p.sigmaPct);
    for (const p of segment) {
      meanLoss += (p.lossPct * weightOf(p.sigmaPct)) / weight;
      meanState += (p.statePct * weightOf(p.sigmaPct)) / weight;
    }
    for (const p of segment) {
      information += (p.lossPct - meanLoss) ** 2 * weightOf(p.sigmaPct);
      slope += (p.lossPct - meanLoss) * (meanState - p.statePct) * weightOf(p.sigmaPct);
      if (p.reading) used++;
    }
  }
  const priorSigma = priorWidth(curve, rates);
  if (information === 0) return { multiplier: 1, sigma: priorSigma, priorSigma, used: 0, observed };
  const best = slope / information;
  const prior = weightOf(priorSigma);
  // Mode of exp(−information·(m − best)²/2 − prior·(ln m)²/2): a scan, since a battery far out of its range makes two.
  const misfit = (u: number) => information * (exp(u) - best) ** 2 + prior * u * u;
  let u = 0;
  for (let trial = -LARGEST_LOG; trial <= LARGEST_LOG; trial += 0.1) if (misfit(trial) < misfit(u)) u = trial;
  for (let step = 0.05; step > 1e-9; step /= 2)
    for (const trial of [u - step, u + step]) if (misfit(trial) < misfit(u)) u = trial;
  const sigma = 1 / Math.sqrt(information * exp(2 * u) + prior);
  return { multiplier: exp(u), sigma, priorSigma, used, observed };
}

/** The range of the plan's own rates read as one sigma to each side: batteries outside it are not rare, faulty ones least. */
function priorWidth(curve: LossCurve, rates: LossRates): number {
  const total = (rate: LossRate) => lossPct(curve, rate, 0, curve.rest.days);
  const [low, high] = [total(rates.low), total(rates.high)];
  const width = low > 0 ? log(high / low) / 2 : 0;
  return Math.max(SMALLEST_PRIOR_SIGMA, width);
}

const untilOff = ({ untilOffPctPerH = 0 }: LossRate) => untilOffPctPerH;

/**
 * The loss rates after calibration: the expected ones times the multiplier, and of the range's width what the readings left.
 * @param rates - before
 * @param calibration - from `calibrate`
 * @param wasOn - the readings were taken with the lead on that is to come off: else they say nothing of what drew on it before
 */
export function calibratedRates(rates: LossRates, calibration: Calibration, wasOn = false): LossRates {
  const { widthLeft } = calibration;
  const m = calibration.result?.multiplier ?? 1;
  const mix = (edge: LossRate): LossRate => ({
    selfPctPerH: m * (rates.expected.selfPctPerH + widthLeft * (edge.selfPctPerH - rates.expected.selfPctPerH)),
    drainPctPerH: m * (rates.expected.drainPctPerH + widthLeft * (edge.drainPctPerH - rates.expected.drainPctPerH)),
    ...(edge.untilOffPctPerH !== undefined && {
      untilOffPctPerH:
        (wasOn ? m : 1) *
        (untilOff(rates.expected) + (wasOn ? widthLeft : 1) * (untilOff(edge) - untilOff(rates.expected))),
    }),
  });
  return { low: mix(rates.low), expected: mix(rates.expected), high: mix(rates.high) };
}
