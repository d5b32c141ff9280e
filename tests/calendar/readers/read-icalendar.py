"""Lists the events of a calendar file with the icalendar package: UID, first day, day after the last, title."""

import sys
from datetime import date, datetime, timedelta

from icalendar import Calendar

with open(sys.argv[1], "rb") as file:
    calendar = Calendar.from_ical(file.read())

for event in calendar.walk("VEVENT"):
    start, end = event.decoded("DTSTART"), event.decoded("DTEND")
    for day in (start, end):
        assert isinstance(day, date) and not isinstance(day, datetime), f"found {day!r}, expected a whole day"
    (alarm,) = event.walk("VALARM")
    assert alarm.decoded("TRIGGER") == timedelta(hours=-15), alarm.decoded("TRIGGER")
    assert not event.errors, event.errors
    print(event["UID"], start, end, event["SUMMARY"], sep="\t")
