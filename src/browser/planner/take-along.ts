/** What can be taken along from the planner page, each as a file. */
import { saveFile } from '../save-file.ts';
import { zip } from '../zip.ts';
import type { PlannerClient } from './client.ts';

/**
 * Makes a file and hands it to the person.
 * @param what - "content", "plan", "calendar" of the machine, "calendar-all"
 * @param machine - id of the one that is shown
 */
export async function takeAlong(client: PlannerClient, what: string, machine: string | undefined): Promise<void> {
  switch (what) {
    case 'content':
      return saveFile('content.zip', 'application/zip', zip(await client.ask('content', {})));
    case 'plan':
      return saveFile('plan.json', 'application/json', JSON.stringify(await client.ask('plan', {})));
    default: {
      const one = what === 'calendar' ? machine : undefined;
      return saveFile(`${one ?? 'all'}.ics`, 'text/calendar', await client.ask('calendar', { machine: one }));
    }
  }
}
