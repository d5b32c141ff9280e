import { addMonths } from '../dates.ts';
import type { IsoDate, Machine, ServiceItem } from '../household.ts';
import type { ServiceDue } from '../season-plan.ts';
import { formatQuantity } from '../units/index.ts';
import { counted, type Manner, writtenDate } from '../written.ts';
import { brakeFluidText } from './brake-fluid.ts';
import { dayUsedUp, MOST_YEARS, nextSeasonEnd } from './usage.ts';

interface Reason {
  by: ServiceDue['by'];
  due: IsoDate;
  why: string;
}

/** Kilometres or hours that a machine counts. */
interface Count {
  by: 'distance' | 'hours';
  name: string;
  /** Where the counter stands when the item comes due. */
  dueAt: number | undefined;
  now: number | undefined;
  perSeason: number | undefined;
  written: (count: number) => string;
}

/**
 * When each service item of a machine comes due: by calendar, distance, hours or its own observed return.
 * @param machine - with its service items, counters and use in a season
 * @param asOf - the day the plan is made for; the counters stand as of it
 * @param manner - language and units of the texts
 * @returns one entry an item, in the order of the machine's file
 * Source: intervals as given with each item; kilometres and hours spread evenly over the days of use.
 */
export function dueServices(machine: Machine, asOf: IsoDate, manner: Manner): ServiceDue[] {
  const seasonEnd = nextSeasonEnd(machine.season);
  return machine.services.map((item) => dueOf(item, machine, asOf, seasonEnd, manner));
}

function dueOf(item: ServiceItem, machine: Machine, asOf: IsoDate, seasonEnd: IsoDate, manner: Manner): ServiceDue {
  const counts = countsOf(item, machine, manner);
  const reasons = [...byDate(item), ...counts.flatMap((count) => byCount(count, machine, asOf))];
  const first = reasons.reduce<Reason | undefined>((a, b) => (a === undefined || b.due < a.due ? b : a), undefined);
  // The counter stands and the mark is known: the item is not unknown but simply not datable.
  const known = counts.some(({ dueAt, now }) => dueAt !== undefined && now !== undefined);
  const pulledIn = first ? first.due <= seasonEnd : hasInterval(item) && !known;
  const said = first ? dated(first, pulledIn, machine, asOf, manner) : undated(item, pulledIn, counts);
  return {
    id: item.id,
    what: item.what,
    due: first?.due,
    dueKm: counts[0].dueAt,
    dueHours: counts[1].dueAt,
    by: first?.by ?? 'unknown',
    pulledIn,
    text: [said, fluidNote(item, machine, manner)].filter(Boolean).join(' '),
  };
}

function countsOf({ interval, lastDone }: ServiceItem, machine: Machine, { units }: Manner): [Count, Count] {
  const { odometerKm, seasonKm, engineHours, seasonHours } = machine;
  return [
    {
      by: 'distance',
      name: 'distance',
      dueAt: sum(lastDone?.km, interval.km),
      now: odometerKm,
      perSeason: seasonKm,
      written: (km) => formatQuantity(km, 'km', units),
    },
    {
      by: 'hours',
      name: 'engine hours',
      dueAt: sum(lastDone?.hours, interval.hours),
      now: engineHours,
      perSeason: seasonHours,
      written: (hours) => `${hours.toFixed(0)} h`,
    },
  ];
}

function byDate(item: ServiceItem): Reason[] {
  const date = item.lastDone?.date;
  if (date === undefined) return [];
  const after = (months: number) => addMonths(date, Math.round(months));
  const observed = observedMonths(item);
  const { months } = item.interval;
  if (observed !== undefined) {
    const why = `it came back after ${counted(observed, 'month')}, so that is its own interval`;
    return [{ by: 'observed', due: after(observed), why }];
  }
  return months === undefined
    ? []
    : [{ by: 'calendar', due: after(months), why: `${counted(months, 'month')} after it was last done` }];
}

function byCount({ by, name, dueAt, now, perSeason, written }: Count, machine: Machine, asOf: IsoDate): Reason[] {
  if (dueAt === undefined || now === undefined) return [];
  const due = dayUsedUp(dueAt - now, perSeason, machine.season, asOf);
  return due === undefined ? [] : [{ by, due, why: `by ${name}, at ${written(dueAt)}` }];
}

/** An early return becomes the part's own interval; one later than the interval says nothing of wear. */
function observedMonths(item: ServiceItem): number | undefined {
  const { observedMonths: seen, interval } = item;
  if (seen === undefined || !(seen > 0)) return undefined;
  return interval.months === undefined || seen < interval.months ? seen : undefined;
}

function sum(done: number | undefined, interval: number | undefined): number | undefined {
  return done === undefined || interval === undefined ? undefined : done + interval;
}

function hasInterval(item: ServiceItem): boolean {
  const { months, km, hours } = item.interval;
  return months !== undefined || km !== undefined || hours !== undefined || item.observedMonths !== undefined;
}

function undated(item: ServiceItem, pulledIn: boolean, counts: readonly Count[]): string {
  if (!hasInterval(item)) return 'No interval is given.';
  if (pulledIn) return 'Nobody knows when it was last done: do it at this lay-up and write the day down.';
  const marks = counts.flatMap(({ dueAt, written }) => (dueAt === undefined ? [] : written(dueAt)));
  const used = counts.some(
    ({ dueAt, now, perSeason = 0 }) => dueAt !== undefined && now !== undefined && perSeason > 0,
  );
  const why = used
    ? `by the use in a season that is not within ${MOST_YEARS} years`
    : 'without the use in a season no day can be told';
  return `Due at ${marks.join(' or ')}; ${why}.`;
}

function dated({ due, why }: Reason, pulledIn: boolean, machine: Machine, asOf: IsoDate, { locale }: Manner): string {
  const when = due <= asOf ? 'Overdue' : `Due ${writtenDate(due, locale)}`;
  const then = !pulledIn
    ? ''
    : due < machine.season.firstUse
      ? ' Done at this lay-up.'
      : ' It would fall into next season, so it is done at this lay-up.';
  return `${when}: ${why}.${then}`;
}

function fluidNote(item: ServiceItem, machine: Machine, manner: Manner): string {
  const grade = machine.chassis.brakeFluid;
  if (grade === undefined || !/brake.?fluid/i.test(`${item.id} ${item.what}`)) return '';
  return brakeFluidText(grade, manner);
}
