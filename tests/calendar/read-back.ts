/** Reads a calendar file back with ical.js, a reader that shares no code with what wrote it. */
import ICAL from 'ical.js';

export interface ReadEvent {
  uid: string;
  start: string;
  /** Exclusive, as it stands in the file. */
  end: string;
  summary: string;
  description: string;
  url: string | null;
  categories: string[];
  sequence: number;
  stamp: string;
  lastModified: string;
  transparency: string;
  alarms: { action: string; trigger: string; description: string }[];
}

const text = (component: ICAL.Component, name: string) => String(component.getFirstPropertyValue(name) ?? '');

export function readBack(file: string): { calendar: ICAL.Component; events: ReadEvent[] } {
  const calendar = new ICAL.Component(ICAL.parse(file));
  const events = calendar.getAllSubcomponents('vevent').map((event) => ({
    uid: text(event, 'uid'),
    start: text(event, 'dtstart'),
    end: text(event, 'dtend'),
    summary: text(event, 'summary'),
    description: text(event, 'description'),
    url: event.hasProperty('url') ? text(event, 'url') : null,
    categories: (event.getFirstProperty('categories')?.getValues() ?? []).map(String),
    sequence: Number(event.getFirstPropertyValue('sequence')),
    stamp: text(event, 'dtstamp'),
    lastModified: text(event, 'last-modified'),
    transparency: text(event, 'transp'),
    alarms: event.getAllSubcomponents('valarm').map((alarm) => ({
      action: text(alarm, 'action'),
      trigger: text(alarm, 'trigger'),
      description: text(alarm, 'description'),
    })),
  }));
  return { calendar, events };
}
