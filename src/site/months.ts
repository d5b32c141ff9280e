/** Month sheets: the weeks of each month of the season with what falls on each day. */
import { addDays, dayNumber } from '../planner/dates.ts';
import type { IsoDate } from '../planner/household.ts';
import type { PlanEvent } from '../planner/season-plan.ts';

export interface MonthSheet {
  /** First day of the month. */
  first: IsoDate;
  /** Rows of seven days from Monday; a day of another month is empty. */
  weeks: ({ date: IsoDate; events: PlanEvent[] } | undefined)[][];
}

/** The months that hold events, one sheet each. */
export function monthSheets(events: readonly PlanEvent[]): MonthSheet[] {
  const byDay = new Map<IsoDate, PlanEvent[]>();
  for (const event of events) byDay.set(event.date, [...(byDay.get(event.date) ?? []), event]);
  const months = [...new Set([...byDay.keys()].map((date) => date.slice(0, 7)))].sort();
  return months.map((month) => {
    const first = `${month}-01`;
    // Day 0 was a Thursday: Monday is the first column.
    const lead = (((dayNumber(first) + 3) % 7) + 7) % 7;
    const cells: MonthSheet['weeks'][number] = Array.from({ length: lead }, () => undefined);
    for (let date = first; date.startsWith(month); date = addDays(date, 1))
      cells.push({ date, events: byDay.get(date) ?? [] });
    while (cells.length % 7 !== 0) cells.push(undefined);
    return { first, weeks: Array.from({ length: cells.length / 7 }, (_, i) => cells.slice(i * 7, i * 7 + 7)) };
  });
}
