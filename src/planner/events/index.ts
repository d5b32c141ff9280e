import { daysBetween } from '../dates.ts';
import type { EventCategory, PlanEvent } from '../season-plan.ts';
import { chargeDrafts } from './charges.ts';
import { deadlineDrafts } from './deadlines.ts';
import type { Draft, PlanWithoutEvents } from './draft.ts';
import { uidOf } from './identity.ts';
import { orderDrafts } from './orders.ts';
import { paperworkDrafts } from './paperwork.ts';
import { startUpDrafts } from './start-up.ts';
import { workBlocks, workDrafts } from './work.ts';

/** Which of two reminders of the same day stands first. */
const RANK: readonly EventCategory[] = ['order', 'paperwork', 'charge', 'look-in', 'lay-up', 'winter', 'start-up'];

/**
 * The reminders of a season, in order of date: charges and trips, look-ins, work sessions, orders, deadlines, paperwork,
 * ready, first use and re-check.
 *
 * The UID of each stays when the plan is made anew with other dates or words (see identity.ts). Steps that are done leave no
 * reminder, and none lies after a machine's first use except the re-check after its first ride.
 * @param plan - the plan without its reminders
 * @returns reminders with different UIDs, the same for the same plan
 */
export function makeEvents(plan: PlanWithoutEvents): PlanEvent[] {
  const blocks = workBlocks(plan);
  const { drafts: charges, told } = chargeDrafts(
    plan,
    blocks.filter((block) => block.phase === 'look-in' && block.open.length > 0),
  );
  const drafts = [
    ...orderDrafts(plan),
    ...paperworkDrafts(plan),
    ...charges,
    ...workDrafts(
      plan,
      blocks.filter((block) => !told.has(block)),
    ),
    ...deadlineDrafts(plan),
    ...startUpDrafts(plan),
  ];
  const place = new Map(plan.machines.map((machine, index) => [machine.id, index]));
  const before = (a: Draft, b: Draft) =>
    daysBetween(b.event.date, a.event.date) ||
    RANK.indexOf(a.event.category) - RANK.indexOf(b.event.category) ||
    (place.get(a.event.machine ?? '') ?? 0) - (place.get(b.event.machine ?? '') ?? 0);
  const times = new Map<string, number>();
  return drafts.sort(before).map(({ key, event }) => {
    // Ids are unique in content; should a key come twice all the same, two reminders must not become one.
    const text = JSON.stringify(key);
    const time = (times.get(text) ?? 0) + 1;
    times.set(text, time);
    return { uid: uidOf(time === 1 ? key : [...key, time]), ...event };
  });
}
