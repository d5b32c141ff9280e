/** What can be taken along from the planner page, each as a file. */
import { saveFile } from '../save-file.ts';
import { zip } from '../zip.ts';
import type { PlannerClient } from './client.ts';
import { keepTaken, takenReminders } from './taken.ts';
import { PLANNER } from './words.ts';

/**
 * Makes a file and hands it to the person.
 * @param what - "content", "plan", "calendar" of the machine, "calendar-all"
 * @param machine - id of the one that is shown
 * @returns what the person has to know of it, if anything
 */
export async function takeAlong(client: PlannerClient, what: string, machine: string | undefined): Promise<string> {
  switch (what) {
    case 'content':
      saveFile('content.zip', 'application/zip', zip(await client.ask('content', {})));
      return '';
    case 'plan':
      saveFile('plan.json', 'application/json', JSON.stringify(await client.ask('plan', {})));
      return '';
    default: {
      const one = what === 'calendar' ? machine : undefined;
      const { file, taken } = await client.ask('calendar', { machine: one, taken: takenReminders() });
      saveFile(`${one ?? 'all'}.ics`, 'text/calendar', file);
      return keepTaken(taken) ? '' : PLANNER.notRemembered;
    }
  }
}
