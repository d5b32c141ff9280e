/**
 * SeasonPlan -> iCalendar text. What calendar programs and the library that writes the file get wrong is guarded against in
 * this file alone; who calls `calendarOf` need not know of it.
 *
 * Source: RFC 5545 (2009), RFC 7986 (2016) for NAME and REFRESH-INTERVAL; behaviour of ical-generator 11.1 as read in its source.
 */
import ical, { foldLines, ICalAlarmType, ICalEventBusyStatus, ICalEventTransparency } from 'ical-generator';
import { addDays, dayNumber, isoOfDay } from '../planner/dates.ts';
import type { IsoDate } from '../planner/household.ts';
import type { PlanEvent, SeasonPlan } from '../planner/season-plan.ts';

export interface CalendarOptions {
  /** Only the reminders of this machine, trips that it shares included. */
  machineId?: string | undefined;
  /** Base address of the site; the plan's own when it is left out. Without one, reminders have no link. */
  siteUrl?: string | undefined;
}

const DAY_S = 86_400;
/** Nine in the morning of the day before: an all-day event begins at midnight. */
const ALARM_BEFORE_S = 15 * 3600;
/** Zero of SEQUENCE. Minutes from here stay below 2³¹ for four thousand years. */
const SEQUENCE_EPOCH_MS = Date.UTC(2024, 0, 1);

/**
 * The calendar file of the household, or of one machine.
 *
 * All events are whole days without a time zone. The same plan gives the same bytes in every time zone and locale of the
 * process. DTSTAMP, LAST-MODIFIED and SEQUENCE come from the plan's `household.revised`, never from a clock.
 * @param plan - the plan with its reminders
 * @param options - which machine, which site
 * @returns text of an .ics file, lines of at most 75 octets ended by CRLF
 * Error: RangeError for a machine that is not in the plan, or a date that is none.
 */
export function calendarOf(plan: SeasonPlan, options: CalendarOptions = {}): string {
  return calendarWriter(plan, options.siteUrl)(options.machineId);
}

/**
 * `calendarOf` for several files of one plan: a reminder that is in many of them is written once.
 * @param plan - the plan with its reminders
 * @param siteUrl - base address of the site; the plan's own when it is left out
 * @returns writes the calendar file of a machine, or of the household where no machine is named
 */
export function calendarWriter(plan: SeasonPlan, siteUrl?: string): (machineId?: string) => string {
  const machines = new Map(plan.machines.map((machine) => [machine.id, machine]));
  const site = baseAddress(siteUrl ?? plan.household.siteUrl);
  const revised = instant(plan.household.revised);
  const eventsOf = new Map<string, PlanEvent[]>(plan.machines.map(({ id }) => [id, []]));
  for (const event of plan.events) for (const id of event.machines) eventsOf.get(id)?.push(event);
  const written = new Map<PlanEvent, string>();
  const textOf = (event: PlanEvent): string => {
    const text = written.get(event) ?? eventText(event, site, revised);
    written.set(event, text);
    return text;
  };
  return (machineId) => {
    const machine = machines.get(machineId ?? '');
    if (machineId !== undefined && !machine) {
      const ids = [...machines.keys()].join(', ');
      throw new RangeError(`found machine "${machineId}", expected one of ${ids}`);
    }
    const name = machine ? `${machine.name}, ${plan.household.name}` : plan.household.name;
    const calendar = ical({
      name: calendarName(name),
      prodId: '//Idle Season//Season plan//EN',
      ttl: DAY_S,
    }).toString();
    const events = machine ? eventsOf.get(machine.id)! : plan.events;
    // The library ends its last line without a line break.
    return `${calendar.slice(0, -END.length)}${events.map(textOf).join('')}${END}\r\n`;
  };
}

/** How the library ends a calendar. */
const END = 'END:VCALENDAR';

function eventText(event: PlanEvent, site: string, revised: Date): string {
  const url = site && pageAddress(site, event.path);
  const title = oneLine(event.title);
  const written = ical().createEvent({
    id: event.uid,
    sequence: Math.max(0, Math.floor((revised.getTime() - SEQUENCE_EPOCH_MS) / 60_000)),
    stamp: revised,
    lastModified: revised,
    allDay: true,
    start: wholeDay(event.date),
    end: wholeDay(addDays(event.endDate ?? event.date, 1)),
    summary: title,
    description: clean([event.text, url].filter(Boolean).join('\n\n')),
    transparency: ICalEventTransparency.TRANSPARENT,
    busystatus: ICalEventBusyStatus.FREE,
    categories: [{ name: event.category }],
    alarms: [{ type: ICalAlarmType.display, trigger: ALARM_BEFORE_S, description: title }],
    url: url || null,
  });
  return foldLines(written.toString());
}

/** Midnight in UTC: a library that is told no time zone prints a `Date` as it reads there, whatever the process's zone is. */
function wholeDay(date: IsoDate): Date {
  const midnight = new Date(dayNumber(date) * DAY_S * 1000);
  if (isoOfDay(dayNumber(date)) !== date) throw new RangeError(`found "${date}", expected a date such as 2026-10-25`);
  return midnight;
}

function instant(text: string): Date {
  const value = new Date(text);
  if (!/^\d{4}-\d{2}-\d{2}T.*(Z|[+-]\d{2}:\d{2})$/.test(text) || Number.isNaN(value.getTime()))
    throw new RangeError(`found "${text}", expected an instant such as 2026-10-25T08:00:00Z`);
  return value;
}

/** One half of a surrogate pair without the other: no character, and fatal to `encodeURIComponent`. */
const HALF_PAIR = /\p{Cs}/gu;

/**
 * Text as a calendar file can hold it: line breaks of every kind as "\n", no other control character, no half of a surrogate
 * pair. The library escapes what RFC 5545 (3.3.11) asks for but lets control characters through.
 */
function clean(text: string): string {
  return text
    .replace(HALF_PAIR, '\uFFFD')
    .replace(/\r\n|[\r\n\v\f\u0085\u2028\u2029]/g, '\n')
    .replaceAll('\t', ' ')
    .replace(/(?!\n)[\p{Cc}\uFEFF]/gu, '')
    .trim();
}

const oneLine = (text: string) => clean(text).replace(/\s*\n\s*/g, ' ');

/** The library writes a calendar's name as it is, so that a comma or a line break in it would break the file. */
const calendarName = (name: string) => oneLine(name).replace(/[\\;,]/g, (found) => `\\${found}`);

/** An address as a calendar file can hold it, or '' for what is no web address. */
function baseAddress(siteUrl: string): string {
  if (!URL.canParse(siteUrl)) return '';
  const { protocol, href } = new URL(siteUrl);
  return /^https?:$/.test(protocol) ? percentEncoded(href).replace(/\/+$/, '') : '';
}

function pageAddress(site: string, path: string): string {
  const segments = path.split('/').map((segment) => encodeURIComponent(segment.replace(HALF_PAIR, '\uFFFD')));
  return percentEncoded(`${site}${segments.join('/')}`);
}

/** The library escapes comma, semicolon and backslash in a URL as if it were text; a reader then finds another address. */
function percentEncoded(url: string): string {
  return url.replace(/[,;\\]/g, (found) => `%${found.charCodeAt(0).toString(16).toUpperCase()}`);
}
