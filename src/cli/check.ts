/** `npm run check`: reads and plans the content, prints every problem, builds nothing. */
import { contentFolder } from './paths.ts';
import { planContent } from './plan-content.ts';

const plan = planContent(contentFolder());
if (!plan) process.exit(1);
console.log(`${plan.machines.length} machines: no problem found.`);
