import type { Battery, IsoDate } from '../household.ts';
import { round } from './charge.ts';
import { type LossRate, type LossRates, monthlyText } from './loss.ts';
import { type JudgedReading, REST_H } from './readings.ts';
import { FULL_AT_LEAST_PCT } from './upkeep.ts';

/** Days after a full charge in which a low reading speaks of the plates and not of time [d]. */
const SOON_DAYS = 7;

/** What the estimate found. */
export interface Found {
  rates: LossRates;
  multiplier: number;
  factor: number;
  connected: boolean;
  /** Readings behind the multiplier. */
  used: number;
  /** Over the days that the readings span: how many, and hours at 20 °C with the same self-discharge. */
  observed: { days: number; equivalentH: number };
  /** Language of the numbers. */
  locale: string;
  /** A date in words. */
  written: (date: IsoDate) => string;
}

/**
 * What the log suggests: a dead cell, sulphated plates, a drain or a failing cell; undefined where nothing stands out.
 *
 * A rate is called too fast when even one sigma less is more than the high-loss path over the days that were observed.
 */
export function suggestion(
  battery: Battery,
  readings: readonly JudgedReading[],
  charges: readonly { index: number; toPct: number }[],
  found: Found,
): string | undefined {
  const usable = readings.filter((r) => r.usable);
  const lead = battery.chemistry !== 'lifepo4';
  const short = readings.find((r) => r.cellShort);
  if (short)
    return `${found.written(short.date)}: ${round(short.volts, 2, found.locale)} V is about one cell (2.1 V) short of a charged battery: a cell may be dead, or the battery is quite empty. Charge it, rest it ${REST_H.better} h and read again; if it comes back to the same, replace it.`;
  if (lead) {
    for (const reading of usable) {
      const full = charges.find(
        (c) => c.toPct >= 95 && reading.index > c.index && reading.index - c.index <= SOON_DAYS,
      );
      if (full && reading.stateOfChargePct + reading.spreadPct < FULL_AT_LEAST_PCT)
        return `It read ${round(reading.stateOfChargePct, 0, found.locale)} % within ${SOON_DAYS} days of a full charge: the plates no longer take the charge (sulphated), or the charge was not finished. Charge it to the end, rest it ${REST_H.better} h and read again.`;
    }
  }
  const { rates, multiplier, factor, connected, used, observed } = found;
  if (used === 0 || !(observed.days > 0)) return undefined;
  const perDay = (rate: LossRate) => (rate.selfPctPerH * observed.equivalentH) / observed.days + 24 * rate.drainPctPerH;
  const most = perDay(rates.high);
  const seen = multiplier * perDay(rates.expected);
  if (!(seen / factor > most)) return undefined;
  const own = (rates.expected.selfPctPerH * observed.equivalentH) / observed.days;
  const drainMA = ((seen - own) / 100) * battery.capacityAh * battery.health.value * (1000 / 24);
  const rate = `It loses ${monthlyText(seen * 30)}, where at most ${monthlyText(most * 30)} was reckoned with`;
  return connected
    ? `${rate}: with the leads on that is a key-off drain of about ${round(drainMA, 0, found.locale)} mA. Measure it in series at the negative lead; if it is small, a cell is failing.`
    : `${rate}, though nothing is connected: a cell is failing, or a lead was left on (a drain of about ${round(drainMA, 0, found.locale)} mA would do it). Load-test it before the machine is relied on.`;
}
