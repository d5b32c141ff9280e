/** `npm run check -- --content ../my-garage`: reads and plans the content, prints every problem, builds nothing. */
import { contentFolder, readCommandLine } from './paths.ts';
import { planContent } from './plan-content.ts';

readCommandLine(['content', 'today']);
const planned = await planContent(contentFolder());
if (!planned) process.exit(1);
console.log(`${planned.plan.machines.length} machines: no problem found.`);
