/** `npm run check -- --content ../my-garage`: reads and plans the content, prints every problem, builds nothing. */
import { counted } from '../planner/written.ts';
import { contentFolder, readCommandLine } from './paths.ts';
import { planContent } from './plan-content.ts';

readCommandLine(['content', 'today']);
const planned = await planContent(contentFolder());
if (!planned) process.exit(1);
console.log(`${counted(planned.plan.machines.length, 'machine')}: no problem found.`);
