/** Calendar writing beside the library it is made with. */
import { join } from 'node:path';
import ical, { ICalAlarmType, ICalEventBusyStatus, ICalEventTransparency } from 'ical-generator';
import { calendarOf } from '../../calendar/index.ts';
import { readFolder } from '../../content/read-folder.ts';
import { addDays } from '../../planner/dates.ts';
import { planSeason } from '../../planner/plan.ts';
import type { PlanEvent } from '../../planner/season-plan.ts';
import { PROJECT } from '../paths.ts';
import type { Row } from './row.ts';
import { timeBeside } from './timing.ts';

const EVENTS = 1000;
const SITE = 'https://idle.example';

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
  const { run, other, ratio } = timeBeside(
    () => calendarOf({ ...plan, events }, { siteUrl: SITE }),
    () => bareCalendar(events),
    20,
  );
  return [
    { what: `calendar of ${EVENTS} reminders`, value: run.median, unit: 'ms', note: `least ${run.least.toFixed(1)}` },
    { what: 'the same by the bare library', value: other.median, unit: 'ms', note: `least ${other.least.toFixed(1)}` },
    { what: 'calendar, ratio to the bare library', value: ratio, unit: '×' },
  ];
}

function bareCalendar(events: readonly PlanEvent[]): string {
  const calendar = ical({ name: 'bench' });
  const stamp = new Date('2026-11-25T07:00:00Z');
  for (const event of events) {
    const url = `${SITE}${event.path}`;
    calendar.createEvent({
      id: event.uid,
      sequence: 1,
      stamp,
      lastModified: stamp,
      allDay: true,
      start: new Date(`${event.date}T00:00:00Z`),
      end: new Date(`${addDays(event.date, 1)}T00:00:00Z`),
      summary: event.title,
      description: `${event.text}\n\n${url}`,
      transparency: ICalEventTransparency.TRANSPARENT,
      busystatus: ICalEventBusyStatus.FREE,
      categories: [{ name: event.category }],
      alarms: [{ type: ICalAlarmType.display, trigger: 54_000, description: event.title }],
      url,
    });
  }
  return calendar.toString();
}
