import { type Days, openDays } from '../battery/index.ts';
import { chargeAsked, chargeTimeText } from '../charging-time.ts';
import { addDays, addMonths, dayNumber, daysBetween, earlier, later } from '../dates.ts';
import type { Household, IsoDate, Machine, StepEach } from '../household.ts';
import type { BeforeCharge } from '../season-plan.ts';
import { LOOK_IN } from '../ticked.ts';
import { writtenDate } from '../written.ts';
import { type Amounts, isAssumed, withUnits } from './amounts.ts';
import { type PlanParts, windowsOf } from './parts.ts';

/** One repetition of a step: what it is for, its own amounts, and its own days where it has them. */
export interface Occurrence {
  /** Id of the thing, put behind the items the step opens or closes. */
  key: string;
  /** Number in the step's id; its place in the list where absent. */
  n?: number | undefined;
  amounts: Amounts;
  /** Minutes of the thing itself, where they are known. */
  minutes?: number | undefined;
  date?: IsoDate | undefined;
  latest?: IsoDate | undefined;
  /** The day by which it was due, where its own day lies after that. */
  overdue?: IsoDate | undefined;
  /** What has to be settled before the charge. */
  before?: BeforeCharge | undefined;
  /** A look-in at which the battery was read: a voltage is logged about its day. */
  isRead?: boolean | undefined;
  /** A look-in that is ticked as a whole about its day. */
  isLookedIn?: boolean | undefined;
}

/** A paper that runs out by so many days after the first use is seen to before it. Common practice. */
const PAPER_DAYS = 31;

/** A visit that a charge brings anyway stands for the monthly look when it is this near. */
const SHARE_DAYS = 12;

/** The day of the month about which somebody looks in: the same for all machines, so that one way serves them all. */
const MIDDLE_OF_MONTH = 15;

/** Longer than this no machine rests unseen: a month, with a weekend to either side. Common practice. */
const MOST_DAYS = 39;

/** Nothing new is to be seen so soon after the lay-up, or so shortly before the start-up. */
const SOON_DAYS = 7;

/**
 * What a step is repeated for on this machine: papers are those that run out by a month after the first use, services those
 * that are due and that no winter job of the same id does.
 * @param each - the kind of repetition
 * @returns in order of date or of the machine's own list; empty where there is nothing to repeat for
 */
export function occurrences(each: StepEach, machine: Machine, household: Household, parts: PlanParts): Occurrence[] {
  const date = (iso: IsoDate) => writtenDate(iso, household.locale);
  switch (each) {
    case 'tyre':
      return parts.tyres.map((tyre, index) => ({
        key: distinct(parts.tyres, index),
        amounts: withUnits(
          {
            position: tyre.position,
            setPressure: tyre.setKPa,
            normalPressure: tyre.normalKPa,
            expectedPressure: tyre.expectedAtStartUpKPa,
          },
          isAssumed(machine, `tyres.${index}.pressureKPa`) ? ['setPressure', 'normalPressure', 'expectedPressure'] : [],
        ),
      }));
    case 'charge':
      return (parts.battery?.charges ?? []).map((charge, index) => ({
        key: String(charge.occurrence ?? index + 1),
        n: charge.occurrence,
        amounts: withUnits({
          chargeAh: chargeAsked(charge).ampHours,
          chargeTime: chargeTimeText(charge.hours, charge.hoursMost, household.locale),
          chargeLatest: charge.overdue
            ? `${date(charge.date)}, overdue since ${date(charge.earliest)}`
            : date(later(charge.date, charge.earliest)),
        }),
        date: charge.date,
        latest: later(charge.date, charge.earliest),
        overdue: charge.overdue ? charge.earliest : undefined,
        before: charge.before,
      }));
    case 'look-in':
      return lookIns(machine, household, parts);
    // A charge begins with a reading, and one taken after it tells nothing of the rest.
    case 'look-in-without-charge':
      return lookIns(machine, household, parts).filter(
        ({ date: day }) => !parts.battery?.charges.some((charge) => charge.date === day),
      );
    case 'service':
      return parts.services
        .filter((service) => service.pulledIn && !machine.jobs.some((job) => job.id === service.id && !job.done))
        .map((service) => ({
          key: service.id,
          amounts: withUnits({ service: service.what, serviceWhy: service.text }),
          minutes: machine.services.find((item) => item.id === service.id)?.minutes,
        }));
    case 'paper':
      return machine.paperwork
        .filter((paper) => paper.date <= addDays(machine.season.firstUse, PAPER_DAYS))
        .map((paper) => ({
          key: paper.id,
          amounts: withUnits({ paper: paper.what, paperDate: date(paper.date) }),
        }));
    case 'paused-paper':
      return machine.paperwork
        .filter((paper) => paper.pausedOverRest)
        .map((paper) => ({ key: paper.id, amounts: withUnits({ pausedPaper: paper.what }) }));
  }
}

function lookIns(machine: Machine, household: Household, parts: PlanParts): Occurrence[] {
  const days = lookInDates(machine, household, parts);
  const read = new Set(machine.readings.flatMap((reading) => lookInOf(days, reading.date) ?? []));
  const looked = new Set(
    machine.doneSteps.flatMap(({ stepId, date }) => (stepId === LOOK_IN ? (lookInOf(days, date) ?? []) : [])),
  );
  return days.map((day, index) => ({
    key: day,
    n: index + 1,
    amounts: {},
    date: day,
    latest: earlier(addDays(day, SHARE_DAYS), machine.season.firstUse),
    isRead: read.has(day),
    isLookedIn: looked.has(day),
  }));
}

/**
 * The days on which somebody looks in: about the middle of each month of the rest, on a day with hours for it where there is
 * one near; a charge that is near stands for the month's look. Where that leaves too long a while, after the lay-up or before the
 * start-up above all, one more look falls into it.
 *
 * Where the battery stays in a room and nothing else asks for a visit, the machine is still looked at monthly.
 * @param machine - with its season
 * @param household - whose days have hours, or have none
 * @param parts - charges of its battery
 * @returns dates between lay-up and start-up, in order; none where the rest is under eight weeks
 * Source: US Army administrative storage (TM 9-2330-357-14&P §4-64, 4-65, and others): covered storage is inspected monthly.
 */
export function lookInDates(machine: Machine, household: Days, parts: Pick<PlanParts, 'battery'>): IsoDate[] {
  const { layUpEnd: planned, startUpFrom } = windowsOf(machine.season);
  // Who has ticked the lay-up is gone from then on.
  const laidUp = machine.doneSteps.find(
    ({ stepId, date }) => stepId === 'lay-up' && date >= machine.season.lastUse,
  )?.date;
  const layUpEnd = laidUp !== undefined && laidUp < startUpFrom ? laidUp : planned;
  const visits = parts.battery?.keptAt === 'machine' ? parts.battery.charges.map((charge) => charge.date) : [];
  const { isOpen } = openDays(household);
  const fits = (day: IsoDate) => day >= addDays(layUpEnd, SOON_DAYS) && day <= addDays(startUpFrom, -SOON_DAYS);
  const nearest = (middle: IsoDate) => {
    const near = Array.from({ length: 2 * SHARE_DAYS + 1 }, (_, i) => addDays(middle, nearestFirst(i))).filter(fits);
    return near.find((one) => isOpen(dayNumber(one))) ?? near[0];
  };
  const dates: IsoDate[] = [];
  for (let middle = middleOfMonth(layUpEnd); middle < startUpFrom; middle = addMonths(middle, 1)) {
    const day = visits.find((visit) => Math.abs(daysBetween(visit, middle)) <= SHARE_DAYS) ?? nearest(middle);
    if (day !== undefined && fits(middle)) dates.push(day);
  }
  const seen = [...new Set([layUpEnd, ...dates, startUpFrom])].sort();
  const between = seen.flatMap((day, i) => {
    const days = i === 0 ? 0 : daysBetween(seen[i - 1]!, day);
    return days > MOST_DAYS ? (nearest(addDays(day, -Math.round(days / 2))) ?? []) : [];
  });
  return [...new Set([...dates, ...between])].sort();
}

/** The look-in that a reading or a look stands for: the nearest, where it is as near as a visit that stands for the month's look. */
function lookInOf(days: readonly IsoDate[], reading: IsoDate): IsoDate | undefined {
  const away = (day: IsoDate) => Math.abs(daysBetween(day, reading));
  return days.filter((day) => away(day) <= SHARE_DAYS).sort((a, b) => away(a) - away(b))[0];
}

const middleOfMonth = (day: IsoDate): IsoDate => `${day.slice(0, 8)}${MIDDLE_OF_MONTH}`;

/** 0, −1, 1, −2, 2, … */
const nearestFirst = (i: number) => (i % 2 === 0 ? i / 2 : -(i + 1) / 2);

/** The name of a tyre group as an id; a second group of the same name has its number behind it. */
function distinct(tyres: PlanParts['tyres'], index: number): string {
  const own = slug(tyres[index]!.position);
  return tyres.slice(0, index).some((tyre) => slug(tyre.position) === own) ? `${own}-${index + 1}` : own;
}

/** Letters, digits and hyphens of a name, for ids. */
function slug(text: string): string {
  return (
    text
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'one'
  );
}
