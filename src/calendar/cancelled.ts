/** Reminders that an earlier file had and a later one has no longer: a calendar that imports only adds and replaces. */
import type { IsoDate } from '../planner/household.ts';

// A name may be anything, "END:VEVENT" too: only a line that begins with it is one.
const EVENT = /^BEGIN:VEVENT\r\n[\s\S]*?^END:VEVENT\r\n/gm;
const uidOf = (event: string) => /^UID:(.*)\r$/m.exec(event)?.[1];

/**
 * A calendar file that also takes back what it no longer has.
 *
 * Source: RFC 5545 (2009), 3.8.1.11 (STATUS:CANCELLED), 3.8.7.4 (a revision has a higher SEQUENCE).
 * @param fresh - the new file, as `calendarOf` writes it
 * @param earlier - the file that may have been imported before, as `calendarOf` wrote it
 * @param from - what lies before this day stays as it was
 * @returns the new file, with an event of the same UID and its own revision for each that is gone
 */
export function withCancelled(fresh: string, earlier: string, from: IsoDate): string {
  const revision = ['SEQUENCE', 'DTSTAMP', 'LAST-MODIFIED'].map((name) => new RegExp(`^${name}:.*\\r$`, 'm'));
  const own = fresh.match(EVENT) ?? [];
  const kept = new Set(own.map(uidOf));
  const day = from.replaceAll('-', '');
  const gone = (earlier.match(EVENT) ?? [])
    .filter((event) => !kept.has(uidOf(event)) && (/^DTSTART;VALUE=DATE:(\d+)/m.exec(event)?.[1] ?? '') >= day)
    .map((event) =>
      revision
        .reduce((text, line) => text.replace(line, (old) => line.exec(own[0] ?? event)?.[0] ?? old), event)
        .replace(/^BEGIN:VALARM\r\n[\s\S]*?^END:VALARM\r\n/gm, '')
        .replace(/^END:VEVENT\r\n/m, 'STATUS:CANCELLED\r\n$&'),
    );
  return fresh.replace(/^END:VCALENDAR\r\n/m, (end) => gone.join('') + end);
}
