/** What must hold of every plan, whatever the household: each check says in words what is wrong, or nothing. */
import { calendarOf } from '../../src/calendar/index.ts';
import { airPicture, batteryPicture, type FigureLanguage, stripPicture, yearRing } from '../../src/figures/index.ts';
import { chemistryRow } from '../../src/planner/battery/chemistries.ts';
import { TOP_UP } from '../../src/planner/battery/run.ts';
import { addDays, daysBetween, weekdayOf } from '../../src/planner/dates.ts';
import type { Household, Machine } from '../../src/planner/household.ts';
import type { BatteryPlan, Charge, Derivation, MachinePlan, SeasonPlan } from '../../src/planner/season-plan.ts';
import { seasonPlanSchema } from '../../src/publish/plan-schema.ts';
import { WORDS } from '../../src/site/words.ts';
import { readBack } from '../calendar/read-back.ts';
import { wellFormed } from '../figures/xml.ts';
import type { Planned } from './plan-case.ts';

/** Arithmetic alone moves a figure by less. */
const TINY = 1e-6;

type Check = (planned: Planned) => string[];

/** Every check by its name. */
export const CHECKS: Readonly<Record<string, Check>> = {
  'the plan fits its schema': fitsSchema,
  'no text has lost its figure': soundTexts,
  'what is opened is closed': openedIsClosed,
  'no reminder lies after first use': remindersEnd,
  'a battery stays above its threshold': aboveThreshold,
  'charges fall where and when they may': chargesAllowed,
  'nothing is charged in a closed bag': baggedApart,
  'chargers serve one battery at a time': chargersFree,
  'sessions keep to hours, days and order': sessionsKeep,
  'what comes off goes on in reverse': stripReversed,
  'colds are in order': coldsInOrder,
  'supplies are amounts with a day': suppliesSound,
  'trials are sound': trialsSound,
  'what was reckoned can be reckoned again': derivationsWhole,
};

/** Those that cost as much as the plan itself. */
export const COSTLY: Readonly<Record<string, Check>> = {
  'pictures are sound': picturesSound,
  'calendars can be read back': calendarsRead,
};

/**
 * All that is wrong with a plan, each with the name of its check.
 * @param costly - with pictures and calendars
 */
export function faultsOf(planned: Planned, costly = true): string[] {
  const checks = Object.entries(costly ? { ...CHECKS, ...COSTLY } : CHECKS);
  return checks.flatMap(([name, check]) => check(planned).map((fault) => `${name}: ${fault}`));
}

function fitsSchema({ result }: Planned): string[] {
  const parsed = seasonPlanSchema.safeParse(result.plan);
  return parsed.success ? [] : parsed.error.issues.slice(0, 5).map((i) => `${i.path.join('.')}: ${i.message}`);
}

/** Common practice: a charger's gas does not stay in a bag. */
function baggedApart({ household, result }: Planned): string[] {
  const powered = new Set(household.places.filter(({ power }) => power).map(({ id }) => id));
  return result.plan.machines
    .filter(
      ({ battery, place }) => powered.has(place) && battery?.care === 'maintainer' && battery.keptAt === 'machine',
    )
    .filter(({ corrosion, steps }) => corrosion.desiccant || steps.some(({ id, done }) => id === 'cover.bag' && !done))
    .map(({ id }) => `${id} is closed in its bag with a maintainer on`);
}

/** Words that only a missing value makes; a name that holds one is the user's own. */
const LOST = /\bNaN\b|\bundefined\b|\[object |\bInfinity\b|(?<![\w$]){[a-z][\w.-]*}/i;

function soundTexts({ household, result }: Planned): string[] {
  const own = JSON.stringify([
    household.machines,
    household.places,
    household.chargers,
    household.stands,
    household.name,
    household.batteryRoom,
  ]);
  const found: string[] = [];
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'string') {
      const lost = LOST.exec(value)?.[0];
      if (lost !== undefined && !own.includes(lost)) found.push(`${path}: ${value}`);
    } else if (Array.isArray(value)) for (const [i, item] of value.entries()) visit(item, `${path}.${i}`);
    else if (typeof value === 'object' && value !== null)
      for (const [key, item] of Object.entries(value)) visit(item, `${path}.${key}`);
  };
  visit(result.plan, 'plan');
  return found.slice(0, 5);
}

/** What is reckoned with is not milder than a usual year's coldest hour, and that not warmer than the year's warmest. */
function coldsInOrder({ result }: Planned): string[] {
  return result.plan.machines.flatMap(({ id, air: { reckonedLowC, lowestC, highestC } }) =>
    reckonedLowC <= lowestC && lowestC <= highestC ? [] : [`${id}: ${reckonedLowC}, ${lowestC}, ${highestC} °C`],
  );
}

function openedIsClosed({ result }: Planned): string[] {
  const { plan, problems } = result;
  return [
    ...problems.map((p) => `${p.file} ${p.item}: ${p.what}`),
    ...plan.machines.flatMap((machine) => {
      const at = new Map(machine.steps.map((step, i) => [step.id, i]));
      const items = plan.ledger.filter((item) => item.machine === machine.id);
      const opened = machine.steps.flatMap((s) => s.opens);
      const closed = machine.steps.flatMap((s) => s.closes).sort();
      const left = items.filter((i) => i.openedBy === 'as left').map((i) => i.item);
      // What was found open may also be opened by a step that is done, or still printed.
      const all = [...opened.filter((item) => !left.includes(item)), ...left].sort();
      return [
        ...(at.size === machine.steps.length ? [] : [`${machine.id}: a step id stands twice`]),
        ...(all.join() === closed.join() ? [] : [`${machine.id}: opened ${all}; closed ${closed}`]),
        ...items
          .filter(
            (i) => !(at.has(i.closedBy) && (i.openedBy === 'as left' || at.get(i.closedBy)! > at.get(i.openedBy)!)),
          )
          .map((i) => `${machine.id}: ${i.item} opened by ${i.openedBy}, closed by ${i.closedBy}`),
      ];
    }),
  ];
}

function remindersEnd({ result }: Planned): string[] {
  const { events, machines } = result.plan;
  const ends = new Map(machines.map((m) => [m.id, m.startUp.firstUse]));
  const uids = new Set(events.map((e) => e.uid));
  return [
    ...(uids.size === events.length ? [] : ['a UID stands twice']),
    ...events.flatMap((event) =>
      event.machines.flatMap((id) => {
        const end = ends.get(id);
        if (end === undefined) return [`"${event.title}" is of no machine: ${id}`];
        const recheck =
          event.category === 'start-up' && /: re-check after the first (?:ride|drive|use)$/.test(event.title);
        return (event.endDate ?? event.date) > end && !recheck
          ? [`"${event.title}" on ${event.date}, first use ${end}`]
          : [];
      }),
    ),
  ];
}

/** What the plan itself says it cannot do for a battery. */
function saidOfBattery(plan: SeasonPlan, machine: MachinePlan): string[] {
  const trips = plan.trips.filter((t) => t.machines.includes(machine.id)).flatMap((t) => t.problem ?? []);
  return [...machine.warnings.filter((w) => w.about === 'battery' && w.level !== 'note').map((w) => w.text), ...trips];
}

function aboveThreshold({ household, result }: Planned): string[] {
  return eachBattery(household, result.plan).flatMap(({ machine, battery, given }) => {
    const path = battery.paths!.high;
    const [end, late] = [TOP_UP.days, TOP_UP.mostDays].map((days) => path.length - 1 - days) as [number, number];
    const said = saidOfBattery(result.plan, machine);
    const cannot = said.some((text) =>
      /due by|is down to|down to its threshold|: charge it on|is not kept full|come late/.test(text),
    );
    // What is past cannot be charged any more: the plan goes on from the day it is made for.
    const { asOf } = result.plan;
    const logged = given.charged.map((c) => c.date).filter((day) => day <= asOf);
    const from = [...logged, asOf].sort().at(-1) ?? machine.season.lastUse;
    const low = path.slice(1, Math.max(1, end)).find((day, i) => {
      // Day 0 is left out: the first one here is the day after the last use.
      const least = battery.thresholdPct - (i + 1 >= late ? TOP_UP.underPct : 0);
      return day.date > from && day.stateOfChargePct < least - TINY;
    });
    const faults: string[] = [];
    if (low && !cannot)
      faults.push(
        `${machine.id}: ${low.stateOfChargePct.toFixed(1)} % on ${low.date}, threshold ${battery.thresholdPct} %, and nothing is said of it (${said.join(' ')})`,
      );
    for (const path of Object.values(battery.paths!))
      for (const day of path)
        if (!(day.stateOfChargePct >= -TINY && day.stateOfChargePct <= 100 + TINY))
          faults.push(`${machine.id}: ${day.stateOfChargePct} % on ${day.date}`);
    return faults;
  });
}

function eachBattery(household: Household, plan: SeasonPlan) {
  return plan.machines.flatMap((machine) =>
    machine.battery
      ? [{ machine, battery: machine.battery, given: household.machines.find((m) => m.id === machine.id)! }]
      : [],
  );
}

function chargesAllowed({ household, result }: Planned): string[] {
  const { plan } = result;
  return eachBattery(household, plan).flatMap(({ machine, battery, given }) =>
    battery.charges.flatMap((charge) => [
      ...dayFaults(household, given, machine, charge),
      ...coldFaults(household, given, machine, battery, charge),
      ...chargerFaults(household, given, charge),
    ]),
  );
}

function isOpenDay(household: Household, date: string): boolean {
  const any = Object.values(household.hoursByWeekday).some((hours) => hours > 0);
  return !isAway(household, date) && (!any || household.hoursByWeekday[weekdayOf(date)] > 0);
}

function isAway(household: Household, date: string): boolean {
  return household.away.some(({ from, to }) => date >= from && date <= to);
}

/** Where somebody lives, a day without hours for work does for a charge that has no other. */
function isChargeDay(household: Household, { placeId }: Machine, { battery }: MachinePlan, date: string): boolean {
  const isHome = battery!.keptAt === 'room' || household.places.find((p) => p.id === placeId)!.tripMinutes === 0;
  return isOpenDay(household, date) || (isHome && !isAway(household, date));
}

function dayFaults(household: Household, given: Machine, machine: MachinePlan, charge: Charge): string[] {
  const { lastUse, firstUse } = machine.season;
  return [
    ...(isChargeDay(household, given, machine, charge.date)
      ? []
      : [`${machine.id}: charge on ${charge.date}, a day that is not open`]),
    // One that is due before the start-up's week is made before the first start, if need be on its very day.
    ...(charge.date > lastUse && (charge.date < firstUse || (charge.date === firstUse && charge.date > charge.earliest))
      ? []
      : [`${machine.id}: charge on ${charge.date} outside the rest`]),
    ...(charge.ampHours >= 0 &&
    charge.ampHoursMost >= charge.ampHours - TINY &&
    charge.hours >= 0 &&
    charge.hoursMost >= 0
      ? []
      : [`${machine.id}: charge of ${charge.ampHours} to ${charge.ampHoursMost} Ah`]),
  ];
}

/** Lithium iron phosphate never below 0 °C, a frozen battery never: unless it comes into the warm, or the plan warns. */
function coldFaults(
  household: Household,
  given: Machine,
  machine: MachinePlan,
  battery: BatteryPlan,
  charge: Charge,
): string[] {
  if (battery.keptAt === 'room') return [];
  const minC = chemistryRow(battery.chemistry).minChargeC;
  const at = daysBetween(machine.season.lastUse, charge.date);
  const day = battery.paths!.high[at]!;
  const before = battery.paths!.high[at - 1]!;
  const warmth =
    given.battery!.removable &&
    (household.batteryRoom !== undefined || household.places.some((p) => p.power && p.id !== given.placeId));
  const faults: string[] = [];
  if (minC !== undefined && day.temperatureC < minC && !(warmth && charge.why.includes('bring it into the warm')))
    faults.push(`${machine.id}: ${battery.chemistry} charged at ${day.temperatureC.toFixed(1)} °C on ${charge.date}`);
  const frozen = chemistryRow(battery.chemistry).acid && day.temperatureC <= before.freezingPointC;
  if (frozen && !machine.warnings.some((w) => w.about === 'battery' && w.level === 'danger'))
    faults.push(`${machine.id}: may be frozen when it is charged on ${charge.date}, and nothing warns of it`);
  return faults;
}

/** Largest charging current by capacity: common practice; of lithium the standard charge of cell data sheets; from memory. */
const LARGEST_PER_H = { agm: 1 / 5, gel: 1 / 5, 'flooded-antimony': 1 / 8, 'flooded-calcium': 1 / 8, lifepo4: 1 / 2 };

function chargerFaults(household: Household, given: Machine, charge: Charge): string[] {
  if (charge.chargerId === undefined) return [];
  const charger = household.chargers.find((c) => c.id === charge.chargerId);
  const place = household.places.find((p) => p.id === given.placeId)!;
  const { chemistry, capacityAh, removable } = given.battery!;
  if (!charger) return [`${given.id}: no charger "${charge.chargerId}"`];
  const stands = charger.placeId === undefined ? undefined : household.places.find((p) => p.id === charger.placeId)!;
  return [
    ...(charger.chemistries.includes(chemistry)
      ? []
      : [`${given.id}: "${charger.name}" has no setting for ${chemistry}`]),
    ...(charger.currentA <= capacityAh * LARGEST_PER_H[chemistry] + TINY
      ? []
      : [`${given.id}: ${charger.currentA} A on ${capacityAh} Ah`]),
    ...(stands && !stands.power ? [`${given.id}: "${charger.name}" stands where there is no power`] : []),
    ...(removable || (place.power && (stands === undefined || stands === place))
      ? []
      : [`${given.id}: its battery does not come out and "${charger.name}" cannot reach it`]),
  ];
}

function chargersFree({ result }: Planned): string[] {
  const spans = result.plan.trips.flatMap((trip) =>
    trip.charges.flatMap((c) =>
      c.chargerId === undefined || c.startHour === undefined
        ? []
        : [{ id: c.chargerId, date: trip.date, from: c.startHour, to: c.startHour + c.hours, machine: c.machine }],
    ),
  );
  return spans.flatMap((a, i) =>
    spans
      .slice(i + 1)
      .filter((b) => b.id === a.id && b.date === a.date && b.from < a.to - TINY && a.from < b.to - TINY)
      .map((b) => `${a.machine} and ${b.machine} on "${a.id}" on ${a.date}`),
  );
}

function sessionsKeep({ household, result }: Planned): string[] {
  const { plan } = result;
  const faults: string[] = [];
  const steps = new Map(plan.machines.flatMap((m) => m.steps.map((s) => [`${m.id}/${s.id}`, s])));
  const first = new Map<string, string>();
  const last = new Map<string, string>();
  for (const session of plan.sessions) {
    if (isAway(household, session.date)) faults.push(`session on ${session.date}, a day away`);
    const hours = household.hoursByWeekday[weekdayOf(session.date)];
    if (!(session.hours > 0 || session.steps.every((s) => steps.get(`${s.machine}/${s.step}`)?.minutes === 0)))
      faults.push(`session of ${session.hours} h on ${session.date}`);
    if (!(session.hours <= hours + 0.01))
      faults.push(`session of ${session.hours} h on ${session.date}, a day of ${hours} h`);
    for (const { machine, step } of session.steps) {
      const key = `${machine}/${step}`;
      const found = steps.get(key);
      if (!found) faults.push(`session on ${session.date} names ${key}, which is no step`);
      else if (found.done) faults.push(`${key} is done and on ${session.date}`);
      if (!first.has(key)) first.set(key, session.date);
      last.set(key, session.date);
    }
  }
  for (const machine of plan.machines)
    for (const step of machine.steps) {
      const key = `${machine.id}/${step.id}`;
      const from = first.get(key);
      if (from === undefined) continue;
      if (step.date !== from) faults.push(`${key} has the day ${step.date} and stands in the session of ${from}`);
      for (const id of step.after) {
        const before = last.get(`${machine.id}/${id}`);
        if (before !== undefined && before > from) faults.push(`${key} on ${from} before ${id} on ${before}`);
      }
    }
  return faults.slice(0, 5);
}

function stripReversed({ household, result }: Planned): string[] {
  return result.plan.machines.flatMap((machine) => {
    const { strip } = machine;
    if (!strip) return [];
    const given = household.machines.find((m) => m.id === machine.id)!;
    const off = strip.off.map((s) => s.assembly);
    const on = strip.on.map((s) => s.assembly);
    const needed = given.jobs.filter((j) => !j.done).flatMap((j) => j.assemblies);
    const at = new Map(off.map((id, i) => [id, i]));
    return [
      ...(on.join() === off.toReversed().join() ? [] : [`${machine.id}: off ${off}; on ${on}`]),
      ...needed
        .filter((id) => !at.has(id) && !strip.nowOff.some((n) => n.assembly === id))
        .map((id) => `${machine.id}: ${id} stays on`),
      ...given.assemblies.flatMap((a) =>
        at.has(a.id)
          ? a.behind
              .filter((b) => at.has(b) && at.get(b)! > at.get(a.id)!)
              .map((b) => `${machine.id}: ${a.id} off before ${b}`)
          : [],
      ),
      ...(strip.minutesBundled <= strip.minutesSeparate + TINY ? [] : [`${machine.id}: bundling costs time`]),
    ];
  });
}

function suppliesSound({ result }: Planned): string[] {
  return result.plan.supplies.flatMap((line) => [
    ...(line.amount > 0 && Number.isFinite(line.amount) ? [] : [`${line.what}: ${line.amount} ${line.unit}`]),
    ...(line.orderBy === undefined || line.orderBy <= line.needBy
      ? []
      : [`${line.what}: order by ${line.orderBy}, need by ${line.needBy}`]),
  ]);
}

function trialsSound({ result }: Planned): string[] {
  return result.plan.machines.flatMap((machine) => [
    ...machine.assumptions.flatMap((a) => {
      const days = [a.firstChargeAt.low, a.firstChargeAt.high].filter((day) => day !== null);
      return days
        .filter((day) => !(day > machine.season.lastUse && day <= machine.season.firstUse))
        .map((day) => `${machine.id}: ${a.field} would charge on ${day}`);
    }),
    ...machine.whatIf.flatMap((w) =>
      w.lastUse === addDays(machine.season.lastUse, w.days) ? [] : [`${machine.id}: ${w.lastUse}`],
    ),
  ]);
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const SAY: FigureLanguage = {
  monthShort: (month) => MONTHS[month - 1] ?? '?',
  monthName: (month) => MONTHS[month - 1] ?? '?',
  date: (iso) => iso,
  amount: (value, unit, digits = 0) => `${value.toFixed(digits)} ${unit}`.trim(),
  words: WORDS.figures,
};

function picturesSound({ household, result }: Planned): string[] {
  const { plan } = result;
  const about = { id: 'f', title: plan.household.name, description: 'd' };
  const { asOf } = plan;
  const pictures = [
    ['ring', yearRing({ asOf, machines: plan.machines, outdoorC: plan.places[0]!.outdoorTenDayC }, about, SAY)],
    ...plan.machines.flatMap((m) => [
      ...(m.battery
        ? [[`${m.id} battery`, batteryPicture({ name: m.name, asOf, battery: m.battery }, about, SAY)]]
        : []),
      [`${m.id} air`, airPicture({ name: m.name, air: m.air }, about, SAY)],
      ...(m.strip ? [[`${m.id} strip`, stripPicture({ name: m.name, strip: m.strip }, about, SAY)]] : []),
    ]),
  ];
  const own = JSON.stringify([household.name, household.machines.map((m) => [m.name, m.jobs, m.assemblies])]);
  return pictures.flatMap(([name, svg]) => {
    const lost = /NaN|Infinity|undefined|null/.exec(svg!)?.[0];
    const formed = wellFormed(svg!);
    return [
      ...(formed === 'well formed' ? [] : [`${name}: ${formed}`]),
      ...(lost !== undefined && !own.includes(lost) ? [`${name}: ${lost}`] : []),
      ...(/<(?:script|img|style|b)\b/i.test(svg!) ? [`${name}: markup from a name`] : []),
    ];
  });
}

function calendarsRead({ result }: Planned): string[] {
  const { plan } = result;
  const faults: string[] = [];
  const files = [
    { name: 'all', text: calendarOf(plan), events: plan.events },
    ...plan.machines.slice(0, 1).map(({ id }) => ({
      name: id,
      text: calendarOf(plan, { machineId: id }),
      events: plan.events.filter((e) => e.machines.includes(id)),
    })),
  ];
  for (const { name, text, events } of files) {
    const read = readBack(text).events;
    if (read.length !== events.length) faults.push(`${name}: ${read.length} of ${events.length} reminders`);
    const starts = read.map((e) => `${e.uid} ${e.start}`).sort();
    if (
      starts.join() !==
      events
        .map((e) => `${e.uid} ${e.date}`)
        .sort()
        .join()
    )
      faults.push(`${name}: other days or UIDs`);
    if (/[^\r]\n|\r[^\n]/.test(text)) faults.push(`${name}: a line end that is not CRLF`);
    const long = text.split('\r\n').find((line) => Buffer.byteLength(line) > 75);
    if (long !== undefined) faults.push(`${name}: a line of ${Buffer.byteLength(long)} octets`);
  }
  return faults;
}

/** Beside each figure that a model gives stand its equation and what went into it. */
function derivationsWhole({ result }: Planned): string[] {
  const all: Derivation[] = [];
  JSON.stringify(result.plan, (key, value) => {
    if (key === 'derivations') all.push(...value);
    return value;
  });
  return all
    .filter(
      ({ equation, inputs, sources }) =>
        equation === '' || inputs.length === 0 || [...inputs.map(({ name }) => name), ...sources].includes(''),
    )
    .map(({ method }) => `${method} lacks its equation, its figures or the name of one`);
}
