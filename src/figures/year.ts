/** What the pictures of the year are drawn from, and where a day stands in its year. */
import { addDays, dayNumber } from '../planner/dates.ts';
import type { IsoDate } from '../planner/household.ts';

/** The dates of one machine. */
export interface RingMachine {
  name: string;
  layUp: { start: IsoDate; done: IsoDate };
  startUp: { start: IsoDate; firstUse: IsoDate };
}

export interface RingData {
  asOf: IsoDate;
  machines: RingMachine[];
  /** Outdoor temperature every ten days from 1 January, °C. */
  outdoorC: number[];
}

/** Share of its year that has passed on the morning of a day, 0–1 (1 January = 0). */
export function shareOfYear(iso: IsoDate): number {
  const year = Number(iso.slice(0, 4));
  const first = dayNumber(`${iso.slice(0, 4)}-01-01`);
  const next = dayNumber(`${String(year + 1).padStart(4, '0')}-01-01`);
  return (dayNumber(iso) - first) / (next - first);
}

/** First days of the months from the month of `from` to `to`. */
export function monthStarts(from: IsoDate, to: IsoDate): IsoDate[] {
  const out: IsoDate[] = [];
  for (let day = `${from.slice(0, 7)}-01`; day <= to; day = `${addDays(day, 31).slice(0, 7)}-01`) out.push(day);
  return out;
}
