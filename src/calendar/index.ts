export { type CalendarOptions, calendarOf, calendarWriter } from './calendar-file.ts';
export { type MonthDay, type MonthView, monthViews } from './month-view.ts';
