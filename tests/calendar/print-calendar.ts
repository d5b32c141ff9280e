/** Prints a calendar file: run in child processes of other time zones and locales. Arguments: south, machine. */
import { calendarOf } from '../../src/calendar/index.ts';
import { aPlan } from '../fixtures/plan.ts';

const [half, machineId] = process.argv.slice(2);
process.stdout.write(calendarOf(aPlan({ south: half === 'south' }), machineId ? { machineId } : {}));
