/** Calendar writing beside the library it is made with. */
import { join } from 'node:path';
import ical, { ICalAlarmType } from 'ical-generator';
import { calendarOf } from '../../calendar/index.ts';
import { readFolder } from '../../content/read-folder.ts';
import { addDays } from '../../planner/dates.ts';
import { planSeason } from '../../planner/plan.ts';
import type { PlanEvent } from '../../planner/season-plan.ts';
import { PROJECT } from '../paths.ts';
import type { Row } from './row.ts';
import { time } from './timing.ts';

const EVENTS = 1000;

/**
 * Time to write a calendar of a thousand reminders, here and by the bare library with the same fields.
 * @param folder - content of a few machines
 * @param asOf - the day of the plan
 */
export function calendarRows(folder: string, asOf: string): Row[] {
  const { household } = readFolder(folder, { asOf, procedures: join(PROJECT, 'content/procedures') });
  const { plan } = planSeason(household!, { asOf, quick: true });
  const events = Array.from({ length: EVENTS }, (_, i): PlanEvent => {
    const event = plan.events[i % plan.events.length]!;
    return { ...event, uid: `${event.uid}-${i}` };
  });
  const ours = time(() => calendarOf({ ...plan, events }), 20);
  const bare = time(() => bareCalendar(events), 20);
  return [
    { what: `calendar of ${EVENTS} reminders`, value: ours.median, unit: 'ms', note: `least ${ours.least.toFixed(1)}` },
    { what: 'the same by the bare library', value: bare.median, unit: 'ms', note: `least ${bare.least.toFixed(1)}` },
    { what: 'calendar, ratio to the bare library', value: ours.median / bare.median, unit: '×' },
  ];
}

function bareCalendar(events: readonly PlanEvent[]): string {
  const calendar = ical({ name: 'bench' });
  const stamp = new Date('2026-11-25T07:00:00Z');
  for (const event of events)
    calendar.createEvent({
      id: event.uid,
      stamp,
      allDay: true,
      start: new Date(`${event.date}T00:00:00Z`),
      end: new Date(`${addDays(event.date, 1)}T00:00:00Z`),
      summary: event.title,
      description: event.text,
      categories: [{ name: event.category }],
      alarms: [{ type: ICalAlarmType.display, trigger: 54_000, description: event.title }],
    });
  return calendar.toString();
}
