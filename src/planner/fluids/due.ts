import { addMonths } from '../dates.ts';
import type { Household, IsoDate, Machine, ServiceItem } from '../household.ts';
import type { ServiceDue } from '../season-plan.ts';
import { formatQuantity } from '../units/index.ts';
import { counted, type Manner, writtenDate } from '../written.ts';
import { brakeFluidText } from './brake-fluid.ts';
import { dayUsedUp, nextSeasonEnd } from './usage.ts';

interface Reason {
  by: ServiceDue['by'];
  due: IsoDate;
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
  const { interval, lastDone } = item;
  const observed = observedMonths(item);
  const months = observed ?? interval.months;
  const dueKm = sum(lastDone?.km, interval.km);
  const dueHours = sum(lastDone?.hours, interval.hours);
  const reasons: Reason[] = [];
  if (lastDone?.date !== undefined && months !== undefined) {
    reasons.push({
      by: observed === undefined ? 'calendar' : 'observed',
      due: addMonths(lastDone.date, Math.round(months)),
    });
  }
  const byKm = dayOfCount(dueKm, machine.odometerKm, machine.seasonKm, machine, asOf);
  if (byKm) reasons.push({ by: 'distance', due: byKm });
  const byHours = dayOfCount(dueHours, machine.engineHours, machine.seasonHours, machine, asOf);
  if (byHours) reasons.push({ by: 'hours', due: byHours });

  const first = reasons.reduce<Reason | undefined>((a, b) => (a === undefined || b.due < a.due ? b : a), undefined);
  const pulledIn = first ? first.due <= seasonEnd : hasInterval(item) && !countsKnown(dueKm, dueHours, machine);
  return {
    id: item.id,
    what: item.what,
    due: first?.due,
    dueKm,
    dueHours,
    by: first?.by ?? 'unknown',
    pulledIn,
    text: [
      sentence(item, first, { dueKm, dueHours, asOf, pulledIn, seasonEnd, machine }, manner),
      fluidNote(item, machine, manner.units),
    ]
      .filter(Boolean)
      .join(' '),
  };
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

function dayOfCount(
  dueAt: number | undefined,
  now: number | undefined,
  perSeason: number | undefined,
  machine: Machine,
  asOf: IsoDate,
): IsoDate | undefined {
  return dueAt === undefined || now === undefined ? undefined : dayUsedUp(dueAt - now, perSeason, machine.season, asOf);
}

function hasInterval(item: ServiceItem): boolean {
  const { months, km, hours } = item.interval;
  return months !== undefined || km !== undefined || hours !== undefined || item.observedMonths !== undefined;
}

/** The counter stands and the mark is known, so the item is not unknown but simply not datable. */
function countsKnown(dueKm: number | undefined, dueHours: number | undefined, machine: Machine): boolean {
  return (
    (dueKm !== undefined && machine.odometerKm !== undefined) ||
    (dueHours !== undefined && machine.engineHours !== undefined)
  );
}

function sentence(
  item: ServiceItem,
  first: Reason | undefined,
  facts: {
    dueKm: number | undefined;
    dueHours: number | undefined;
    asOf: IsoDate;
    pulledIn: boolean;
    seasonEnd: IsoDate;
    machine: Machine;
  },
  { units, locale }: Manner,
): string {
  const { dueKm, dueHours, asOf, pulledIn, machine } = facts;
  const marks = [
    dueKm === undefined ? '' : formatQuantity(dueKm, 'km', units),
    dueHours === undefined ? '' : `${dueHours.toFixed(0)} h`,
  ].filter(Boolean);
  if (!first) {
    if (!hasInterval(item)) return 'No interval is given.';
    if (!pulledIn) return `Due at ${marks.join(' or ')}; without the use in a season no day can be told.`;
    return 'Nobody knows when it was last done: do it at this lay-up and write the day down.';
  }
  const why: Record<ServiceDue['by'], string> = {
    calendar: `${counted(item.interval.months ?? 0, 'month')} after it was last done`,
    observed: `it came back after ${counted(item.observedMonths ?? 0, 'month')}, so that is its own interval`,
    distance: `by distance, at ${dueKm === undefined ? '' : formatQuantity(dueKm, 'km', units)}`,
    hours: `by engine hours, at ${dueHours === undefined ? '' : `${dueHours.toFixed(0)} h`}`,
    unknown: '',
  };
  const when = first.due <= asOf ? 'Overdue' : `Due ${writtenDate(first.due, locale)}`;
  const then = !pulledIn
    ? ''
    : first.due < machine.season.firstUse
      ? ' Done at this lay-up.'
      : ' It would fall into next season, so it is done at this lay-up.';
  return `${when}: ${why[first.by]}.${then}`;
}

function fluidNote(item: ServiceItem, machine: Machine, units: Household['units']): string {
  const grade = machine.chassis.brakeFluid;
  if (grade === undefined || !/brake.?fluid/i.test(`${item.id} ${item.what}`)) return '';
  return brakeFluidText(grade, (temperatureC) => formatQuantity(temperatureC, '°C', units));
}
