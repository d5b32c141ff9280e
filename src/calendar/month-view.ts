import { Info } from 'luxon';
import { addDays, addMonths, eachDay, weekdayOf } from '../planner/dates.ts';
import type { IsoDate, Weekday } from '../planner/household.ts';
import type { EventCategory, SeasonPlan } from '../planner/season-plan.ts';

export interface MonthDay {
  date: IsoDate;
  /** 1–31. */
  day: number;
  /** False for the days of the months before and after that fill the first and the last week. */
  inMonth: boolean;
  /** What there is to do, each act once; only on days of the month itself. */
  labels: { uid: string; text: string; category: EventCategory; machines: string[] }[];
}

export interface MonthView {
  year: number;
  /** 1–12. */
  month: number;
  /** In the order of the columns. */
  weekdays: Weekday[];
  weeks: MonthDay[][];
}

const WEEKDAYS: readonly Weekday[] = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

/**
 * The months of a plan as they are printed for the shed wall: every month from the first reminder to the last, in whole weeks
 * that begin on the day the household's locale begins them.
 * @param plan - the plan with its reminders
 * @returns months in order; empty when there is no reminder
 * Source: first day of the week from Unicode CLDR, supplemental week data; Monday where the runtime does not have it.
 */
export function monthViews(plan: Pick<SeasonPlan, 'household' | 'events'>): MonthView[] {
  const firstDay = Info.getStartOfWeek({ locale: plan.household.locale });
  const weekdays = [...WEEKDAYS.slice(firstDay - 1), ...WEEKDAYS.slice(0, firstDay - 1)];
  const byDay = labelsByDay(plan);
  const days = [...byDay.keys()].sort();
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  const views: MonthView[] = [];
  for (let start = `${first.slice(0, 7)}-01`; start <= last; start = addMonths(start, 1)) {
    views.push(monthView(start, weekdays, byDay));
  }
  return views;
}

function monthView(start: IsoDate, weekdays: Weekday[], byDay: ReadonlyMap<IsoDate, MonthDay['labels']>): MonthView {
  const end = addDays(addMonths(start, 1), -1);
  const before = weekdays.indexOf(weekdayOf(start));
  const after = 6 - weekdays.indexOf(weekdayOf(end));
  const days = eachDay(addDays(start, -before), addDays(end, after)).map((date): MonthDay => {
    const inMonth = date >= start && date <= end;
    return { date, day: Number(date.slice(8)), inMonth, labels: inMonth ? (byDay.get(date) ?? []) : [] };
  });
  const weeks = Array.from({ length: days.length / 7 }, (_, i) => days.slice(i * 7, i * 7 + 7));
  return { year: Number(start.slice(0, 4)), month: Number(start.slice(5, 7)), weekdays, weeks };
}

function labelsByDay(plan: Pick<SeasonPlan, 'events'>): Map<IsoDate, MonthDay['labels']> {
  const byDay = new Map<IsoDate, MonthDay['labels']>();
  for (const { uid, date, endDate, title, label, category, machines } of plan.events) {
    for (const day of eachDay(date, endDate ?? date)) {
      const labels = byDay.get(day) ?? [];
      const text = label ?? title;
      if (!labels.some((other) => other.text === text)) labels.push({ uid, text, category, machines });
      byDay.set(day, labels);
    }
  }
  return byDay;
}
