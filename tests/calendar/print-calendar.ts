/** Prints the calendar files of both hemispheres, one after the other: run in child processes of other zones and locales. */
import { calendarOf } from '../../src/calendar/index.ts';
import { aPlan } from '../fixtures/plan.ts';

process.stdout.write(calendarOf(aPlan()) + calendarOf(aPlan({ south: true }), { machineId: 'juniper' }));
