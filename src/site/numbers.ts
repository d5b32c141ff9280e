/** Which five numbers of a machine matter most: the first five that apply to it, in a fixed order of weight. */
import { daysBetween } from '../planner/dates.ts';
import type { BatteryPlan, MachinePlan } from '../planner/season-plan.ts';
import type { Format } from './formats.ts';
import { WORDS } from './words.ts';

export interface BigNumber {
  name: string;
  value: string;
  note: string;
}

const words = WORDS.machine.numbers;

/** The five numbers in a household's way of writing; always five, whatever the machine lacks. */
export function fiveNumbersOf(m: MachinePlan, format: Format): BigNumber[] {
  return [driveBattery, battery, fuel, coolant, tyres, always].flatMap((part) => part(m, format)).slice(0, 5);
}

function driveBattery({ driveBattery }: MachinePlan, { amount }: Format): BigNumber[] {
  if (!driveBattery) return [];
  const { low, high } = driveBattery.keepPct;
  const { heading, rest } = WORDS.machine.driveBattery;
  return [{ name: heading, value: low === high ? amount(high, '%', 0) : `${low}–${amount(high, '%', 0)}`, note: rest }];
}

function battery({ battery, layUp }: MachinePlan, format: Format): BigNumber[] {
  if (!battery) return [];
  const { minK, month } = battery.freezingMargin;
  const next = nextCharge(battery, format);
  const said = (one: BigNumber) => (layUp.late ? { ...one, note: words.ifLaidUp(one.note) } : one);
  return [
    battery.charges[0]?.overdue || battery.chargeAtStartUp?.overdue ? next : said(next),
    said({
      name: words.margins[battery.chemistry === 'lifepo4' ? 'storage' : 'freezing'][minK < 0 ? 'beyond' : 'above'],
      value: format.amount(Math.abs(minK), 'K'),
      note: minK < 0 ? words.beyondIn(format.monthName(month)) : words.marginIn(format.monthName(month)),
    }),
  ];
}

/** The first charge; where its day is past, that it is overdue and when it is to be made. */
function nextCharge(
  { charges, care, chargeWithoutDay, chargeAtStartUp, notKeptSince, outOfReach }: BatteryPlan,
  { shortDay, fromNow }: Format,
): BigNumber {
  const [first] = charges;
  if (first?.overdue)
    return {
      name: words.overdue,
      value: shortDay(first.earliest),
      note: words.chargeOn(fromNow(first.date), shortDay(first.date)),
    };
  if (first) return { name: words.firstCharge, value: shortDay(first.date), note: words.charges(charges.length) };
  if (chargeWithoutDay !== undefined)
    return {
      name: words.dueBy,
      value: shortDay(chargeWithoutDay),
      note: words[outOfReach ? 'outOfReach' : 'withoutDay'],
    };
  if (chargeAtStartUp !== undefined) {
    const { due, overdue } = chargeAtStartUp;
    return {
      name: overdue ? words.overdue : words.dueBy,
      value: shortDay(due),
      note: overdue ? words.overdueAtStartUp : words.atStartUp,
    };
  }
  const kept = notKeptSince === undefined ? WORDS.cares.maintainer : words.notKept;
  return { name: words.firstCharge, value: words.noCharge, note: care === 'maintainer' ? kept : words.charges(0) };
}

function fuel({ fuel, layUp }: MachinePlan, { amount }: Format): BigNumber[] {
  if (!fuel) return [];
  const dose = fuel.doseML === undefined ? '' : words.dose(amount(fuel.doseML, 'mL'));
  const note = fuel.choice === 'leave' ? words.orLess : dose;
  if (fuel.settled === 'past') return [{ name: words.fuelIn, value: '?', note: words.notTicked }];
  if (fuel.settled === 'done')
    return fuel.choice === 'drain'
      ? [{ name: words.fuelDrained, value: amount(fuel.drainedL ?? 0, 'L'), note: '' }]
      : [{ name: words.fuelIn, value: amount(fuel.levelL, 'L'), note }];
  if (fuel.choice === 'leave') return [{ name: words.fuelAdd, value: words.noFuel, note: words.leaveFuel }];
  if (fuel.choice === 'drain')
    return [{ name: words.fuelDrain, value: amount(fuel.drainedL ?? 0, 'L'), note: words.cans(fuel.cans ?? 0) }];
  return [
    {
      name: words.fuelAdd,
      value: amount(fuel.addL ?? 0, 'L'),
      note: layUp.late ? words.ifLaidUp(note) : note,
    },
  ];
}

function coolant({ coolant }: MachinePlan, { amount }: Format): BigNumber[] {
  if (!coolant) return [];
  return [
    {
      name: words.coolant,
      value: coolant.freezeC === undefined ? '?' : amount(coolant.freezeC, '°C'),
      note:
        coolant.unwritten !== undefined
          ? words.coolantUnwritten[coolant.unwritten]
          : coolant.freezeC === undefined
            ? words.coolantUnknown
            : words.coolantNeed(amount(coolant.aimC, '°C')),
    },
  ];
}

function tyres({ tyres }: MachinePlan, { amount }: Format): BigNumber[] {
  const tyre = tyres[0];
  if (!tyre) return [];
  return [
    {
      name: words.tyre(tyre.position),
      value: amount(tyre.setKPa, 'kPa'),
      note: words.tyreNormal(amount(tyre.normalKPa, 'kPa')),
    },
  ];
}

/** What every machine has. */
function always(m: MachinePlan, { dayText, duration, number }: Format): BigNumber[] {
  const work = (phase: 'lay-up' | 'start-up') => {
    const steps = m.steps.filter((s) => s.phase === phase);
    return { value: duration(steps.reduce((sum, s) => sum + s.minutes, 0)), note: words.steps(steps.length) };
  };
  return [
    { name: words.corrosion, value: m.corrosion.category, note: words.corrosionOf },
    { name: words.layUpWork, ...work('lay-up') },
    { name: words.startUpWork, ...work('start-up') },
    {
      name: words.rest,
      value: WORDS.days(daysBetween(m.layUp.done, m.startUp.firstUse)),
      note: words.restFrom(dayText(m.layUp.done)),
    },
    { name: words.wet, value: number(Math.round(wetHours(m))), note: words.wetOver },
  ];
}

function wetHours(m: MachinePlan): number {
  return m.air.months.reduce((sum, month) => sum + month.wetHours + (month.frostHours ?? 0), 0);
}
