/** Reminders that an earlier file had and the plan has no longer: a calendar that imports only adds and replaces. */
import type { IsoDate } from '../planner/household.ts';

// A name may be anything, "END:VEVENT" too: only a line that begins with it is one.
const EVENT = /^BEGIN:VEVENT\r\n[\s\S]*?^END:VEVENT\r\n/gm;
const ALARM = /^BEGIN:VALARM\r\n[\s\S]*?^END:VALARM\r\n/gm;
const uidOf = (event: string) => /^UID:(.*)\r$/m.exec(event)?.[1];
const isFrom = (day: IsoDate) => (event: string) =>
  (/^DTSTART;VALUE=DATE:(\d+)/m.exec(event)?.[1] ?? '') >= day.replaceAll('-', '');

/**
 * A calendar file that also takes back what the plan no longer has.
 *
 * Source: RFC 5545 (2009), 3.8.1.11 (STATUS:CANCELLED), 3.8.7.4 (a revision has a higher SEQUENCE).
 * @param fresh - the new file, as `calendarOf` writes it: of the household, or of one machine
 * @param earlier - the file that may have been imported before, as `calendarOf` wrote it, or what `remembered` kept of it
 * @param all - the new file of the household: a trip that goes on without this machine is brought up to date, not taken back
 * @param from - what lies before this day stays as it was
 * @returns the new file, with an event of the same UID and its own revision for each that is gone
 */
export function withCancelled(fresh: string, earlier: string, all: string, from: IsoDate): string {
  const [own, whole] = [fresh, all].map((text) => new Map((text.match(EVENT) ?? []).map((e) => [uidOf(e), e])));
  const [revised] = whole!.values();
  const gone = (earlier.match(EVENT) ?? [])
    .filter((event) => isFrom(from)(event) && !own!.has(uidOf(event)))
    .map((event) => whole!.get(uidOf(event)) ?? cancelled(event, revised ?? event));
  return fresh.replace(/^END:VCALENDAR\r\n/m, (end) => gone.join('') + end);
}

const REVISION = ['SEQUENCE', 'DTSTAMP', 'LAST-MODIFIED'].map((name) => new RegExp(`^${name}:.*\\r$`, 'm'));

/** The event taken back, at the revision of another one. */
function cancelled(event: string, revised: string): string {
  return REVISION.reduce((text, line) => text.replace(line, (old) => line.exec(revised)?.[0] ?? old), event)
    .replace(ALARM, '')
    .replace(/^END:VEVENT\r\n/m, 'STATUS:CANCELLED\r\n$&');
}

/**
 * What has to be remembered of files that were taken along, so that the next one can take it back.
 * @param fresh - the file that is taken now
 * @param earlier - what was remembered before: a file that was taken and never imported must not hide one that was
 * @param from - what lies before this day is over
 * @returns events, each UID once, without what a cancelled one does not say
 */
export function remembered(fresh: string, earlier: string, from: IsoDate): string {
  const events = new Map([earlier, fresh].flatMap((text) => (text.match(EVENT) ?? []).map((e) => [uidOf(e), e])));
  return [...events.values()]
    .filter(isFrom(from))
    .map((event) => event.replace(ALARM, '').replace(/^DESCRIPTION:.*\r\n(?:[ \t].*\r\n)*/m, ''))
    .join('');
}
