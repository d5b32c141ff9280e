/** All machines' steps into the household's hours: each start-up as near to its first use as the hours allow. */
import { type Agenda, placeable, planAgenda, taskKey } from './agenda/index.ts';
import type { AgendaTask } from './agenda/types.ts';
import { agendaTasks } from './agenda-tasks.ts';
import { openDays } from './battery/index.ts';
import { addDays, dayNumber, earlier, later } from './dates.ts';
import type { Household, IsoDate, Place } from './household.ts';
import type { DraftMachine } from './machine-plan.ts';

/**
 * Days before the first use that a start-up has in any case: whatever the first use's weekday, a whole weekend is among them.
 * Common practice: a battery is charged, petrol filled and tyres set in the last days, not three weeks before.
 */
const LAST_DAYS = 8;

/**
 * Hours that are left open for each hour of a start-up, tried one after the other where work found no place: sessions end before
 * they are full, and other work wants its own. At last a start-up may take all its three weeks.
 */
const ROOM = [1.25, 2, Number.POSITIVE_INFINITY];

/**
 * Fills the household's sessions.
 *
 * A start-up begins in the days before the first use; earlier, up to three weeks, only where these days lack the hours for it.
 * @param drafts - machines with their steps
 * @param household - hours, days away, hands
 * @param options - the day of the plan, places, hours that are taken already by date [min], whether to leave out the search
 * @returns the agenda
 */
export function householdAgenda(
  drafts: readonly DraftMachine[],
  household: Household,
  options: { asOf: IsoDate; places: readonly Place[]; busy: ReadonlyMap<IsoDate, number>; quick: boolean },
): Agenda {
  const { asOf } = options;
  const wide = drafts.map((draft) => agendaTasks(draft, asOf));
  let eased = new Set(drafts.keys());
  const from: (IsoDate | undefined)[] = [];
  let agenda: Agenda | undefined;
  let possible: Set<string> | undefined;
  for (const room of ROOM) {
    const found = startUpFroms(wide, drafts, household, options.busy, room);
    const moved = [...eased].filter((i) => found[i] !== from[i]);
    if (agenda && moved.length === 0) continue;
    for (const i of moved) from[i] = found[i];
    const tasks = drafts.flatMap((draft, i) => (from[i] ? agendaTasks(draft, asOf, from[i]) : wide[i]!));
    agenda = planAgenda({ ...options, household, tasks });
    const misfits = agenda.misfits.flatMap(({ steps }) => steps);
    if (misfits.length === 0) break;
    // What has no place in all its time finds none by easing.
    possible ??= placeable({ ...options, household, tasks: wide.flat() });
    const eases = misfits.filter(({ machine, step }) => possible!.has(taskKey(machine, step)));
    const lacking = new Set(eases.map(({ machine }) => machine));
    eased = new Set([...drafts.keys()].filter((i) => from[i] && lacking.has(drafts[i]!.machine.id)));
    if (eased.size === 0) break;
  }
  return agenda!;
}

/**
 * From which day on each machine's start-up is planned: back from the first use until its work has so much room, machines with the latest
 * first use first, as all share the hours. Undefined where that is all the time it has.
 */
function startUpFroms(
  tasks: readonly AgendaTask[][],
  drafts: readonly DraftMachine[],
  household: Household,
  busy: ReadonlyMap<IsoDate, number>,
  room: number,
): (IsoDate | undefined)[] {
  const free = new Map<IsoDate, number>();
  const { isAway, hours } = openDays(household);
  const freeOn = (date: IsoDate) => {
    const day = dayNumber(date);
    return isAway(day) ? 0 : Math.max(0, hours(day) * 60 - (busy.get(date) ?? 0)) * household.hands;
  };
  const from: (IsoDate | undefined)[] = drafts.map(() => undefined);
  const firstUse = (i: number) => drafts[i]!.machine.season.firstUse;
  const order = [...drafts.keys()].sort((a, b) => (firstUse(a) < firstUse(b) ? 1 : firstUse(a) > firstUse(b) ? -1 : 0));
  for (const i of order) {
    const own = tasks[i]!.filter(({ phase, latest }) => phase === 'start-up' && latest <= firstUse(i));
    if (own.length === 0) continue;
    const first = own.reduce((day, { earliest }) => earlier(day, earliest), own[0]!.earliest);
    let day = own.reduce((last, { latest }) => later(last, latest), first);
    let wanted = room * own.reduce((sum, { minutes }) => sum + minutes, 0);
    for (; day > first; day = addDays(day, -1)) {
      const open = free.get(day) ?? freeOn(day);
      free.set(day, Math.max(0, open - wanted));
      wanted -= open;
      if (wanted <= 0) break;
    }
    const start = earlier(day, addDays(firstUse(i), -LAST_DAYS));
    if (start > first) from[i] = start;
  }
  return from;
}
